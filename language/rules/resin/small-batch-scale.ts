import { isKnown, text, type Usual } from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import { layerResin } from '../../../calc/laminate/mass.figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { smallestBatch } from '../../../calc/resin/catalyst.ts';
import { scaleStep } from '../../../calc/resin/mix.figure.ts';
import { resinToMix } from '../../../calc/resin/needs.figure.ts';
import { againstRange, resinsOf, typedDoses } from '../kit/doses.ts';
import { habitOf } from '../kit/habit.ts';
import { about, kilograms, share } from '../kit/shown.ts';
import { stepsOf, type WorkedStep } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** So many steps of the scale keep a dose within 5 %. Common practice. */
const STEPS: Usual = {
  habit: 'scale_steps',
  what: 'steps of the scale in a dose of catalyst',
  value: { si: 20, dimension: NUMBER },
  source: 'common practice',
};

export const resinSmallBatchScale = rule({
  name: 'resin/small-batch-scale',
  severity: 'warning',
  title: 'a batch is too small for its catalyst to be weighed',
  on: 'recipe',
  check(context) {
    const scale = context.ask(scaleStep);
    if (!isKnown(scale)) return;
    const typed = typedDoses(context);
    const steps = habitOf(context.bench, STEPS);
    for (const worked of stepsOf(context)) {
      if (worked.inside !== undefined) continue;
      const infused = isInfused(context, worked);
      if (worked.layers.length === 0 && !infused) continue;
      for (const resin of resinsOf(context, worked)) {
        const own = resin.catalyst?.value;
        const typedHere = typed.find((each) => each.worked === worked && each.resin === resin);
        // a dose outside the range of the resin is told of as that: put right, it may be weighed well
        if (typedHere !== undefined && (againstRange(context, typedHere)?.off ?? 0) !== 0) continue;
        const said = typedHere?.amount;
        const dose = said?.si ?? (own === undefined || own === UNKNOWN ? undefined : own.dose?.si);
        const mass = infused ? needOf(context) : laidBy(context, worked, resin.name);
        if (dose === undefined || mass === undefined) continue;
        const least = smallestBatch(dose, scale.value, steps);
        const catalyst = mass * dose;
        if (typeof least !== 'number' || !(mass > 0) || catalyst >= steps * scale.value) continue;
        const shown = {
          mass: kilograms(about(mass)),
          resin: resin.name,
          catalyst: kilograms(about(catalyst)),
          scale: kilograms(scale.value),
          off: share(about(scale.value / catalyst)),
          least: kilograms(about(least)),
        };
        context.report({
          at: worked.step.path,
          message: text(
            '{mass} of {resin} takes {catalyst} of catalyst: one step of the scale ({scale}) is {off} of it; mix at least {least}, or dose with a syringe',
            shown,
          ),
          related:
            context.bench.shop?.scale === undefined
              ? []
              : [{ at: context.bench.shop.scale.at, message: text('the scale shows steps of {scale}', shown) }],
        });
      }
    }
  },
});

/** What an infusion drinks is mixed in one, with what mesh, peel ply and lines hold: its dry layers are no batch of their own. */
const isInfused = (context: RecipeContext, { classes }: WorkedStep): boolean =>
  context.recipe.process?.kind === 'infusion' && classes.has('infuse');

const isLaidDry = ({ recipe: { process } }: RecipeContext, { step }: WorkedStep, resin: string): boolean =>
  process?.kind === 'infusion' && process.resin === resin && step.lay?.resin === undefined;

/** kg of the resin of the process, all in all */
function needOf(context: RecipeContext): number | undefined {
  const need = context.ask(resinToMix, '');
  return isKnown(need) ? need.value.total : undefined;
}

/** kg of a resin that wets the layers of a step; none where it cannot be told, or where they are laid dry */
function laidBy(context: RecipeContext, worked: WorkedStep, resin: string): number | undefined {
  if (isLaidDry(context, worked, resin)) return undefined;
  let mass = 0;
  for (const { key } of worked.layers) {
    const [name, own] = [context.ask(layerResinName, key), context.ask(layerResin, key)];
    if (!isKnown(own)) return undefined;
    if (isKnown(name) && name.value === resin) mass += own.value.total;
  }
  return mass;
}

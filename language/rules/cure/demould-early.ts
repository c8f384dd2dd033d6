import { equivalentTime } from '../../../calc/cure/equivalent.ts';
import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { spansOf } from '../kit/cures.ts';
import { longerHold } from '../kit/longer-hold.ts';
import { aboutTime, kelvin } from '../kit/shown.ts';
import { before, between, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** The halving for each 10 K is no finer than this, a kelvin and a half: 24 h at 22 degC are as good as 24 h at 23 degC. */
const AS_GOOD_AS = 0.1;

export const cureDemouldEarly = rule({
  name: 'cure/demould-early',
  severity: 'error',
  title: 'the part leaves the tool before its resin allows',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const steps = stepsOf(context);
    const demould = firstOf(steps, 'demould');
    if (demould === undefined || process?.resin === undefined) return;
    const material = context.bench.material(process.resin);
    const fact = material?.demould?.find(({ value }) => value !== UNKNOWN && value.temperature !== undefined);
    if (material === undefined || fact === undefined || fact.value === UNKNOWN) return;
    const wet = process.kind === 'infusion' ? 'infuse' : 'lay';
    const wetted = before(steps, demould).findLast(({ classes }) => classes.has(wet));
    if (wetted === undefined) return;
    const cures = between(steps, wetted, demould).filter(({ inside }) => inside === undefined);
    if (!cures.some(({ classes }) => classes.has('cure'))) return;
    const at = fact.value.temperature?.si ?? 0;
    const spans = spansOf(context, cures);
    if (!isKnown(spans)) return;
    const does = equivalentTime(spans.value, at);
    const needs = fact.value.value;
    if (typeof does !== 'number' || does >= (1 - AS_GOOD_AS) * needs.si) return;
    const shown = { resin: material.name, does: aboutTime(does), needs, temperature: kelvin(at) };
    context.report({
      at: demould.step.path,
      message: text('out of the tool after as much as {does} at {temperature}: {resin} needs {needs}', shown),
      related: [
        { at: fact.at, message: text('{resin} leaves the tool after {needs} at {temperature}', shown) },
        ...cures
          .filter(({ classes }) => classes.has('cure'))
          .map(({ step }) => ({ at: { entry: context.recipe.entry, path: step.path }, message: text('the cure') })),
      ],
      fixes: [longerHold(context, spans.value, needs.si - does, at)],
    });
  },
});

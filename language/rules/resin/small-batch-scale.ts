import { isKnown, text, type Usual } from '../../../calc/figure/index.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { smallestBatch } from '../../../calc/resin/catalyst.ts';
import { doseAt } from '../../../calc/resin/dose.figure.ts';
import { scaleStep } from '../../../calc/resin/mix.figure.ts';
import { resinsUsed } from '../../../calc/resin/needs.figure.ts';
import { stepNeeds } from '../../../calc/resin/step-pots.figure.ts';
import { againstRange, typedDoses } from '../kit/doses.ts';
import { habitOf } from '../kit/habit.ts';
import { valueOf } from '../kit/layers.ts';
import { about, kilograms, share } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

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
    // most recipes cure without a catalyst
    if (allOf(stepsOf(context), 'mix').length === 0) {
      const names = valueOf(context.ask(resinsUsed)) ?? [];
      if (!names.some((name) => context.bench.material(name)?.catalyst !== undefined)) return;
    }
    const typed = typedDoses(context);
    const steps = habitOf(context.bench, STEPS);
    const before = new Set<string>();
    for (const { step, layers, inside } of stepsOf(context)) {
      // what is laid twice is told of as that: nobody knows yet which step wets it
      const twice = layers.some(({ key }) => before.has(key));
      if (inside === undefined) for (const { key } of layers) before.add(key);
      if (twice) continue;
      const needs = context.ask(stepNeeds, step.path);
      for (const { resin, mass: all, pots } of isKnown(needs) ? needs.value : []) {
        const typedHere = typed.find((each) => each.worked.step === step && each.resin.name === resin);
        // a dose outside the range of the resin is told of as that: put right, it may be weighed well
        if (typedHere !== undefined && (againstRange(context, typedHere)?.off ?? 0) !== 0) continue;
        const found = doseAt(context.bench, resin, step.path);
        const dose = isKnown(found) ? found.value?.dose : undefined;
        if (dose === undefined) continue;
        const mass = all / pots;
        const least = smallestBatch(dose, scale.value, steps);
        const catalyst = mass * dose;
        if (typeof least !== 'number' || !(mass > 0) || catalyst >= steps * scale.value * (1 - 1e-9)) continue;
        const shown = {
          mass: kilograms(about(mass)),
          resin,
          catalyst: kilograms(about(catalyst)),
          scale: kilograms(scale.value),
          off: share(about(scale.value / catalyst)),
          least: kilograms(about(least)),
        };
        context.report({
          at: step.path,
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

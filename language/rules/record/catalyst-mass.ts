import { text, type Usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { MASS } from '../../../calc/quantity/index.ts';
import { resinsOf, typedDoses } from '../kit/doses.ts';
import { habitOf } from '../kit/habit.ts';
import { amountsIn, planOf, readingsOf } from '../kit/record-plan.ts';
import { about, kilograms, share } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** Off the plan by more than this. Common practice. */
const OFF: Usual = {
  habit: 'dose',
  what: 'catalyst off the plan',
  value: share(0.1),
  source: 'common practice',
};

export const recordCatalystMass = rule({
  name: 'record/catalyst-mass',
  severity: 'warning',
  title: 'more or less catalyst was weighed than planned',
  on: 'record',
  check(context) {
    const plan = planOf(context);
    if (plan === undefined) return;
    for (const reading of readingsOf(context.record, 'mixed')) {
      const [resin, catalyst] = amountsIn(reading, MASS);
      const layer = reading.words[0];
      const worked = stepsOf(plan).find(({ layers }) =>
        layers.some(({ name, layer: line }) => name === layer || line.name === layer),
      );
      if (resin === undefined || catalyst === undefined || worked === undefined || !(resin.si > 0)) continue;
      const dose = typedDoses(plan).find((each) => each.worked === worked);
      const own = resinsOf(plan, worked)[0]?.catalyst?.value;
      const amount = dose?.amount ?? (own === undefined || own === UNKNOWN ? undefined : own.dose);
      if (amount === undefined || amount.basis === 'by volume' || !(amount.si > 0)) continue;
      const found = catalyst.si / resin.si;
      if (Math.abs(found / amount.si - 1) <= habitOf(plan.bench, OFF) + 1e-9) continue;
      const shown = {
        catalyst,
        resin,
        found: share(about(found)),
        planned: share(amount.si),
        right: kilograms(about(resin.si * amount.si)),
      };
      context.report({
        at: reading.path,
        message:
          found < amount.si
            ? text(
                '{catalyst} on {resin} is {found}, planned were {planned} ({right}): measure the hardness before the part goes out',
                shown,
              )
            : text(
                '{catalyst} on {resin} is {found}, planned were {planned} ({right}): look for cracks and white spots',
                shown,
              ),
        related: [
          {
            at: { entry: plan.recipe.entry, path: dose?.path ?? worked.step.path },
            message: text('planned here: {planned}', shown),
          },
        ],
      });
    }
  },
});

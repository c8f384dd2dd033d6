import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { amountOf, clauseWith, flat, head } from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { materialsThatCure } from '../kit/cures.ts';
import { mendText } from '../kit/mend-text.ts';
import { kelvin } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** How far below the air of a hold the part is waited for, where the fix writes it. */
const BELOW = 3;

const PART_ABOVE = /part\s+above\s+\S+\s*deg[CF]/;

/** At what the materials cure by their data sheets, K. */
const curesOfData = (context: RecipeContext): readonly number[] =>
  materialsThatCure(context).flatMap(({ cure = [] }) =>
    cure.flatMap(({ value }) => (value === UNKNOWN ? [] : [value.temperature?.si ?? 0])),
  );

export const cureNeverReached = rule({
  name: 'cure/never-reached',
  severity: 'error',
  title: 'a hold waits for the part to be warmer than its oven',
  on: 'recipe',
  check(context) {
    let air: number | undefined;
    for (const { step } of stepsOf(context)) {
      if (step.verb !== 'ramp' && step.verb !== 'hold') continue;
      air = amountOf(head(step), TEMPERATURE)?.si ?? air;
      const clause = step.verb === 'hold' ? clauseWith(step, 'above') : undefined;
      const wanted = clause === undefined ? undefined : amountOf(flat(clause), TEMPERATURE)?.si;
      if (air === undefined || wanted === undefined || wanted < air - 1e-6) continue;
      // the part is waited for as it should be, and the oven is too cold: the cure is short, which another rule tells
      if (curesOfData(context).some((cure) => wanted <= cure && (air ?? cure) < cure)) continue;
      const right = `part above ${Math.floor(air - 273.15 - BELOW)} degC`;
      context.report({
        at: step.path,
        message: text('the hold counts from {wanted} in the part, and the oven stands at {air}: it never begins', {
          wanted: kelvin(wanted),
          air: kelvin(air),
        }),
        fixes: [mendText(context, text('Write {what}', { what: right }), step.path, PART_ABOVE, right)],
      });
    }
  },
});

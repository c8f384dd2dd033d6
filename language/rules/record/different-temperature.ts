import { text } from '../../../calc/figure/figure.ts';
import { isKnown, type Usual } from '../../../calc/figure/index.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { gelTime, workTemperature } from '../../../calc/resin/time.figure.ts';
import { timeByFactor } from '../../../calc/resin/working-time.ts';
import { habitOf } from '../kit/habit.ts';
import { amountIn, planOf, readingsOf } from '../kit/record-plan.ts';
import { aboutTime, kelvin, kelvinDifference } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Within this the times of the plan still hold. */
const NEAR: Usual = {
  habit: 'warmth',
  what: 'how far off its plan a build may be warm or cold',
  value: kelvinDifference(5),
  source: 'common practice',
};

export const recordDifferentTemperature = rule({
  name: 'record/different-temperature',
  severity: 'info',
  title: 'the part was built at another temperature than planned',
  on: 'record',
  check(context) {
    const plan = planOf(context);
    // a temperature with no time to compare explains nothing
    if (plan === undefined || readingsOf(context.record, 'fill', 'step').length === 0) return;
    const batch = readingsOf(context.record, 'batch').find((reading) => amountIn(reading, TEMPERATURE) !== undefined);
    const reading = batch ?? readingsOf(context.record, 'ambient')[0];
    const was = amountIn(reading, TEMPERATURE);
    const [planned, gel] = [plan.ask(workTemperature), plan.ask(gelTime, '')];
    if (
      reading === undefined ||
      was === undefined ||
      !isKnown(planned) ||
      !isKnown(gel) ||
      Math.abs(was.si - planned.value) <= habitOf(plan.bench, NEAR) + 1e-9
    )
      return;
    const then = timeByFactor({ temperature: planned.value, value: gel.value }, was.si);
    if (typeof then !== 'number') return;
    const shown = {
      was,
      planned: kelvin(planned.value),
      gel: aboutTime(gel.value),
      gelled: aboutTime(then),
      resin: plan.recipe.process?.resin ?? 'the resin',
    };
    context.report({
      at: reading.path,
      message: text(
        '{was} where {planned} were planned: {resin} gels in about {gelled} instead of {gel}, and fills accordingly',
        shown,
      ),
      related: [
        {
          at: { entry: plan.recipe.entry, path: plan.recipe.process?.path ?? '' },
          message: text('planned at {planned}', shown),
        },
      ],
    });
  },
});

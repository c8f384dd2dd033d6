import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { PRESSURE, sameDimension } from '../../../calc/quantity/index.ts';
import { shortestTest } from '../../../calc/vacuum/leak.ts';
import { leakTests } from '../kit/leak-test.ts';
import { aboutTime, pascals } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const vacuumGaugeTooCoarse = rule({
  name: 'vacuum/gauge-too-coarse',
  severity: 'error',
  title: 'the gauge cannot show what the leak test asks for',
  on: 'recipe',
  check(context) {
    // `habit gauge 5 mbar`: the division of the gauge, which only the shop knows
    const fact = context.bench.shop?.habits?.gauge;
    const division = fact === undefined || fact.value === UNKNOWN ? undefined : fact.value.amounts[0];
    if (fact === undefined || division === undefined || !sameDimension(division.dimension, PRESSURE)) return;
    for (const { step, rise, time } of leakTests(context)) {
      if (rise === undefined || time === undefined || rise.si >= division.si - 1e-9) continue;
      const needs = shortestTest({ rise: rise.si, time: time.si }, division.si);
      if (typeof needs !== 'number') continue;
      const shown = { rise, time, division: pascals(division.si), needs: aboutTime(needs) };
      context.report({
        at: step.path,
        message: text(
          'a gauge with divisions of {division} cannot show {rise}: at that leak it moves by one division in {needs}; take a finer gauge',
          shown,
        ),
        related: [{ at: fact.at, message: text('the gauge of the shop') }],
      });
    }
  },
});

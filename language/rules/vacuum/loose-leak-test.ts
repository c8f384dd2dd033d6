import { text } from '../../../calc/figure/figure.ts';
import { habitOf } from '../kit/habit.ts';
import { leakTests, MOST_LOST, soundTest } from '../kit/leak-test.ts';
import { about, pascals } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const vacuumLooseLeakTest = rule({
  name: 'vacuum/loose-leak-test',
  severity: 'warning',
  title: 'a leak test that a leaking bag passes',
  on: 'recipe',
  check(context) {
    const most = habitOf(context.bench, MOST_LOST);
    for (const test of leakTests(context)) {
      const { step, rise, time } = test;
      if (rise === undefined || time === undefined || !(time.si > 0)) continue;
      const minute = (rise.si / time.si) * 60;
      if (minute <= most * 1.001) continue;
      const shown = { rise, time, minute: pascals(about(minute)), most: pascals(most) };
      context.report({
        at: step.path,
        message: text(
          '{rise} in {time} is {minute} a minute: with more than {most} a minute the part draws air all through the fill',
          shown,
        ),
        fixes: [soundTest(context, test)],
      });
    }
  },
});

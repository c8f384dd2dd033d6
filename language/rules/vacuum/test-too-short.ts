import { isKnown, text } from '../../../calc/figure/figure.ts';
import { usual } from '../../../calc/figure/index.ts';
import { leakTests, SHORTEST_TEST, soundTest } from '../kit/leak-test.ts';
import { seconds } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const vacuumTestTooShort = rule({
  name: 'vacuum/test-too-short',
  severity: 'warning',
  title: 'a leak test too short to tell',
  on: 'recipe',
  check(context) {
    const least = usual(context.bench, SHORTEST_TEST);
    for (const test of leakTests(context)) {
      const { step, time } = test;
      if (time === undefined || !isKnown(least) || time.si >= least.value - 1e-9) continue;
      context.report({
        at: step.path,
        message: text(
          '{time} is too short: the bag settles and the air in the breather moves for the first minutes; {least} at least',
          { time, least: seconds(least.value) },
        ),
        fixes: [soundTest(context, test)],
      });
    }
  },
});

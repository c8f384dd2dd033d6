import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { leakTests } from '../kit/leak-test.ts';
import { mendText, TYPED_PRESSURE, TYPED_TIME } from '../kit/mend-text.ts';
import { asTyped, pascals, seconds } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const LEAST: Usual = { habit: 'test', what: 'shortest leak test', value: seconds(300), source: 'common practice' };

export const vacuumTestTooShort = rule({
  name: 'vacuum/test-too-short',
  severity: 'warning',
  title: 'a leak test too short to tell',
  on: 'recipe',
  check(context) {
    const least = usual(context.bench, LEAST);
    for (const { step, rise, time } of leakTests(context)) {
      if (time === undefined || !isKnown(least) || time.si >= least.value - 1e-9) continue;
      const longer =
        rise === undefined ? undefined : pascals(Math.round(((rise.si / time.si) * least.value) / 100) * 100);
      context.report({
        at: step.path,
        message: text(
          '{time} is too short: the bag settles and the air in the breather moves for the first minutes; {least} at least',
          { time, least: seconds(least.value) },
        ),
        fixes: [
          context.edit.together(
            text('Test for {what}', { what: asTyped(seconds(least.value)) }),
            mendText(context, '', step.path, TYPED_TIME, asTyped(seconds(least.value))),
            longer === undefined ? undefined : mendText(context, '', step.path, TYPED_PRESSURE, asTyped(longer)),
          ),
        ],
      });
    }
  },
});

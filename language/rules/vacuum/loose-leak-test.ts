import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { leakTests } from '../kit/leak-test.ts';
import { mendText, TYPED_PRESSURE } from '../kit/mend-text.ts';
import { about, asTyped, pascals } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** In one minute. */
const MOST: Usual = {
  habit: 'leak_most',
  what: 'the most that a bag may lose in a minute',
  value: pascals(200),
  source: 'published limits run from 2 to 14 mbar a minute; the strictest of them',
};

export const vacuumLooseLeakTest = rule({
  name: 'vacuum/loose-leak-test',
  severity: 'warning',
  title: 'a leak test that a leaking bag passes',
  on: 'recipe',
  check(context) {
    const most = usual(context.bench, MOST);
    for (const { step, rise, time } of leakTests(context)) {
      if (rise === undefined || time === undefined || !(time.si > 0) || !isKnown(most)) continue;
      const minute = (rise.si / time.si) * 60;
      if (minute <= most.value * 1.001) continue;
      const right = asTyped(pascals(Math.max(100, Math.floor((most.value * time.si) / 60 / 100) * 100)));
      const shown = { rise, time, minute: pascals(about(minute)), most: pascals(most.value) };
      context.report({
        at: step.path,
        message: text(
          '{rise} in {time} is {minute} a minute: with more than {most} a minute the part draws air all through the fill',
          shown,
        ),
        fixes: [mendText(context, text('Allow {what}', { what: right }), step.path, TYPED_PRESSURE, right)],
      });
    }
  },
});

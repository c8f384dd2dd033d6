import { text } from '../../../calc/figure/figure.ts';
import { rule } from '../rule.ts';

export const recordExpired = rule({
  name: 'record/expired',
  severity: 'error',
  title: 'a part was built of material past its date',
  on: 'record',
  check(context) {
    const { date, lots } = context.record;
    if (date === undefined) return;
    for (const { material, code, expires, path } of lots) {
      // dates are ISO 8601, so they sort as words
      if (expires === undefined || expires >= date) continue;
      context.report({
        at: path,
        message: text('{material} of lot {code} was past its date on the day: {expires}, built {date}', {
          material,
          code,
          expires,
          date,
        }),
      });
    }
  },
});

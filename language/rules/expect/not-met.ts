import { verdicts } from '../../../calc/expect/evaluate.ts';
import { text } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import type { Quantity } from '../../../calc/quantity/index.ts';
import { valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const expectNotMet = rule({
  name: 'expect/not-met',
  severity: 'error',
  title: 'an expectation of the recipe is not met',
  on: 'recipe',
  check(context) {
    for (const { path, test, verdict, actual, beyond } of valueOf(context.ask(verdicts)) ?? []) {
      if (verdict !== 'not met' || actual === undefined || beyond === undefined) continue;
      const limit = test.limit === UNKNOWN ? undefined : test.limit;
      const over = test.high !== undefined ? actual.si > test.high.si : test.comparison?.startsWith('<') === true;
      const bound = limit ?? (over ? test.high : test.low) ?? actual;
      // a share is shown as its limit is typed
      const alike = (value: Quantity): Quantity => (bound.unit === '%' ? { ...value, unit: '%' } : value);
      const figures = { what: spoken(test.what), actual: alike(actual), beyond: alike(beyond), limit: bound };
      context.report({
        at: path,
        message: over
          ? text('{what} is {actual}, {beyond} over the limit of {limit}', figures)
          : text('{what} is {actual}, {beyond} under the limit of {limit}', figures),
      });
    }
  },
});

const spoken = (what: string): string => what.replaceAll('_', ' ');

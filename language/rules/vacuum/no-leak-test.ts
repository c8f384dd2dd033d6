import { text } from '../../../calc/figure/figure.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { usualTest } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const vacuumNoLeakTest = rule({
  name: 'vacuum/no-leak-test',
  severity: 'warning',
  title: 'the bag is not tested for leaks',
  on: 'recipe',
  check(context) {
    reportMissing(context, {
      step: 'leak test',
      kinds: ['infusion', 'prepreg'],
      message: text('no leak test: a leak shows only when the resin is in, as a dry line along the feed or as voids'),
      line: `leak test ${usualTest(context.bench)}`,
    });
  },
});

import { text } from '../../../calc/figure/figure.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { usualTest } from '../kit/written.ts';
import { rule } from '../rule.ts';

const TEST: Wanted = {
  step: 'leak test',
  kinds: ['infusion', 'prepreg'],
  message: text('no leak test: a leak shows only when the resin is in, as a dry line along the feed or as voids'),
  line: ({ bench }) => `leak test ${usualTest(bench)}`,
};

export const vacuumNoLeakTest = rule({
  name: 'vacuum/no-leak-test',
  severity: 'warning',
  title: 'the bag is not tested for leaks',
  on: 'recipe',
  check: (context) => reportMissing(context, TEST),
});

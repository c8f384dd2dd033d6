import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const feedMissing = rule({
  name: 'feed/missing',
  severity: 'error',
  title: 'an infusion without a feed',
  on: 'recipe',
  check(context) {
    // as the lines call it that would open it
    const [open] = allOf(stepsOf(context), 'open');
    const name = open === undefined ? undefined : subject(open.step);
    reportMissing(context, {
      step: 'feed',
      kinds: ['infusion'],
      message: text('no feed: the resin has no way in'),
      line: `feed ${name ?? 'f1'} spiral_10 from (0 mm, 0 mm) to (100 mm, 0 mm)`,
    });
  },
});

import { text } from '../../../calc/figure/figure.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

export const feedMissing = rule({
  name: 'feed/missing',
  severity: 'error',
  title: 'an infusion without a feed',
  on: 'recipe',
  check(context) {
    reportMissing(context, {
      step: 'feed',
      kinds: ['infusion'],
      message: text('no feed: the resin has no way in'),
      line: 'feed f1 spiral_10 from (0 mm, 0 mm) to (100 mm, 0 mm)',
    });
  },
});

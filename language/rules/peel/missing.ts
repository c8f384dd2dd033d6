import { text } from '../../../calc/figure/figure.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

export const peelMissing = rule({
  name: 'peel/missing',
  severity: 'error',
  title: 'an infusion without peel ply',
  on: 'recipe',
  check(context) {
    reportMissing(context, {
      step: 'peel',
      kinds: ['infusion'],
      message: text('no peel ply: what lies on the stack is cured to the part'),
      line: 'peel nylon_85, 60 mm past edge',
    });
  },
});

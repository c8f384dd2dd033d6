import { text } from '../../../calc/figure/figure.ts';
import { habitOf } from '../kit/habit.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';
import { LEAST } from './too-few-coats.ts';

export const releaseMissing = rule({
  name: 'release/missing',
  severity: 'error',
  title: 'nothing releases the part from the tool',
  on: 'recipe',
  check(context) {
    const tool = context.recipe.stack?.tool ?? 'the tool';
    reportMissing(context, {
      step: 'release',
      kinds: ['hand', 'bagged', 'infusion', 'prepreg'],
      message: text('no release on {tool}: what is laid on a bare tool bonds to it', { tool }),
      line: ({ bench }) => `release semi_permanent, ${Math.max(4, habitOf(bench, LEAST))} coats, 20 min each`,
    });
  },
});

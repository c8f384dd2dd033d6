import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** The feed as the line calls it that would open it. */
function lineOf(context: RecipeContext): string {
  const open = firstOf(stepsOf(context), 'open');
  const name = open === undefined ? undefined : subject(open.step);
  return `feed ${name ?? 'f1'} spiral_10 from (0 mm, 0 mm) to (100 mm, 0 mm)`;
}

const FEED: Wanted = {
  step: 'feed',
  kinds: ['infusion'],
  message: text('no feed: the resin has no way in'),
  line: lineOf,
};

export const feedMissing = rule({
  name: 'feed/missing',
  severity: 'error',
  title: 'an infusion without a feed',
  on: 'recipe',
  check: (context) => reportMissing(context, FEED),
});

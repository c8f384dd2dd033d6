import { reportDrawn } from '../kit/outlines.ts';
import { rule } from '../rule.ts';

export const outlineDegenerate = rule({
  name: 'outline/degenerate',
  severity: 'error',
  title: 'an outline that encloses nothing',
  on: 'recipe',
  check: (context) => reportDrawn(context, 'degenerate'),
});

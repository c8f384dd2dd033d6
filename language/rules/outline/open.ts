import { reportDrawn } from '../kit/outlines.ts';
import { rule } from '../rule.ts';

export const outlineOpen = rule({
  name: 'outline/open',
  severity: 'error',
  title: 'a drawn outline does not close',
  on: 'recipe',
  check: (context) => reportDrawn(context, 'open'),
});

import { reportDrawn } from '../kit/outlines.ts';
import { rule } from '../rule.ts';

export const outlineFileMissing = rule({
  name: 'outline/file-missing',
  severity: 'error',
  title: 'an outline file, layer or curve that is not there',
  on: 'recipe',
  check: (context) => reportDrawn(context, 'file-missing'),
});

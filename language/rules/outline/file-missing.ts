import { rule } from '../rule.ts';

export const outlineFileMissing = rule({
  name: 'outline/file-missing',
  severity: 'error',
  title: 'an outline file that cannot be read',
  on: 'reading',
});

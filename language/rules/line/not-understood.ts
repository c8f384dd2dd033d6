import { rule } from '../rule.ts';

export const lineNotUnderstood = rule({
  name: 'line/not-understood',
  severity: 'error',
  title: 'a line that cannot be read',
  on: 'reading',
});

import { rule } from '../rule.ts';

export const unitNoReference = rule({
  name: 'unit/no-reference',
  severity: 'error',
  title: 'a vacuum without absolute or gauge',
  on: 'reading',
});

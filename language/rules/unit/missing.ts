import { rule } from '../rule.ts';

export const unitMissing = rule({
  name: 'unit/missing',
  severity: 'error',
  title: 'a number that measures something carries no unit',
  on: 'reading',
});

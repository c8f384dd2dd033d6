import { rule } from '../rule.ts';

export const unitNoBasis = rule({
  name: 'unit/no-basis',
  severity: 'error',
  title: 'a share of a mixture without by weight or by volume',
  on: 'reading',
});

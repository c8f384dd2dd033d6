import { rule } from '../rule.ts';

export const unitWetOrDry = rule({
  name: 'unit/wet-or-dry',
  severity: 'error',
  title: 'a film thickness that does not say wet or dry',
  on: 'reading',
});

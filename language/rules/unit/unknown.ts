import { rule } from '../rule.ts';

export const unitUnknown = rule({
  name: 'unit/unknown',
  severity: 'error',
  title: 'a unit that is not known',
  on: 'reading',
});

import { rule } from '../rule.ts';

export const unitSuspicious = rule({
  name: 'unit/suspicious',
  severity: 'error',
  title: 'a value that nothing in a workshop can have',
  on: 'reading',
});

import { rule } from '../rule.ts';

export const unitWrongDimension = rule({
  name: 'unit/wrong-dimension',
  severity: 'error',
  title: 'a quantity of the wrong kind',
  on: 'reading',
});

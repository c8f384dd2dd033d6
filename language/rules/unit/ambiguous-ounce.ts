import { rule } from '../rule.ts';

export const unitAmbiguousOunce = rule({
  name: 'unit/ambiguous-ounce',
  severity: 'error',
  title: 'an ounce, gallon or pint that may be one of two',
  on: 'reading',
});

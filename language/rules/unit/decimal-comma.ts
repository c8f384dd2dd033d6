import { rule } from '../rule.ts';

export const unitDecimalComma = rule({
  name: 'unit/decimal-comma',
  severity: 'error',
  title: 'a decimal comma',
  on: 'reading',
});

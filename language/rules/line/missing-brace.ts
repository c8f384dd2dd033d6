import { rule } from '../rule.ts';

export const lineMissingBrace = rule({
  name: 'line/missing-brace',
  severity: 'error',
  title: 'a block that is not closed',
  on: 'reading',
});

import { rule } from '../rule.ts';

export const lineSurplusBrace = rule({
  name: 'line/surplus-brace',
  severity: 'error',
  title: 'a brace that closes nothing',
  on: 'reading',
});

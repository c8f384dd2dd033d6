import { rule } from '../rule.ts';

export const recordImpossible = rule({
  name: 'record/impossible',
  severity: 'error',
  title: 'a day that the calendar does not have',
  on: 'reading',
});

import { rule } from '../rule.ts';

export const nameCyclic = rule({
  name: 'name/cyclic',
  severity: 'error',
  title: 'a value that is worked out from itself',
  on: 'reading',
});

import { reportOutside } from '../kit/outside.ts';
import { rule } from '../rule.ts';

export const insertOutsidePart = rule({
  name: 'insert/outside-part',
  severity: 'error',
  title: 'an insert stands out over the finished edge',
  on: 'recipe',
  check: (context) => reportOutside(context, 'insert'),
});

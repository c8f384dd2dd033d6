import { reportOutside } from '../kit/outside.ts';
import { rule } from '../rule.ts';

export const stripOutsidePart = rule({
  name: 'strip/outside-part',
  severity: 'warning',
  title: 'a strip stands out over the finished edge',
  on: 'recipe',
  check: (context) => reportOutside(context, 'strip'),
});

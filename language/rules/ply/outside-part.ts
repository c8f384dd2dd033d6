import { reportOutside } from '../kit/outside.ts';
import { rule } from '../rule.ts';

export const plyOutsidePart = rule({
  name: 'ply/outside-part',
  severity: 'warning',
  title: 'a ply stands out over the finished edge',
  on: 'recipe',
  check: (context) => reportOutside(context, 'ply'),
});

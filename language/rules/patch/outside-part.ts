import { reportOutside } from '../kit/outside.ts';
import { rule } from '../rule.ts';

export const patchOutsidePart = rule({
  name: 'patch/outside-part',
  severity: 'warning',
  title: 'a patch stands out over the finished edge',
  on: 'recipe',
  check: (context) => reportOutside(context, 'patch'),
});

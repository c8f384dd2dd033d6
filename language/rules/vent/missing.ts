import { text } from '../../../calc/figure/figure.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

const VENT: Wanted = {
  step: 'vent',
  kinds: ['infusion'],
  message: text('no vent: the air has no way out'),
  line: () => 'vent v1 spiral_10 perimeter, 60 mm outside',
};

export const ventMissing = rule({
  name: 'vent/missing',
  severity: 'error',
  title: 'an infusion without a vent',
  on: 'recipe',
  check: (context) => reportMissing(context, VENT),
});

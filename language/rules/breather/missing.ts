import { text } from '../../../calc/figure/figure.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const BREATHER: Wanted = {
  step: 'breather',
  kinds: ['bagged', 'prepreg'],
  message: text('no breather: the film seals itself to the part, and beyond that the vacuum does not reach'),
  line: ({ recipe }) =>
    recipe.process?.kind === 'prepreg' ? 'breather glass_300' : 'breather poly_150, 80 mm past edge',
};

export const breatherMissing = rule({
  name: 'breather/missing',
  severity: 'warning',
  title: 'nothing leads the air from the part to the port',
  on: 'recipe',
  check(context) {
    // a vent line with nothing but peel ply under it draws as well on a small part
    if (firstOf(stepsOf(context), 'vent') !== undefined) return;
    reportMissing(context, BREATHER);
  },
});

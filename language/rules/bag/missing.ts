import { text } from '../../../calc/figure/figure.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

const BAG: Wanted = {
  step: 'bag',
  kinds: ['bagged', 'infusion', 'prepreg'],
  message: text('no bag: without one there is no vacuum'),
  line: ({ recipe }) => `bag ${recipe.process?.kind === 'prepreg' ? 'film_75_hot' : 'film_50'}, pleats 12 of 50 mm`,
};

export const bagMissing = rule({
  name: 'bag/missing',
  severity: 'error',
  title: 'a process under vacuum without a bag',
  on: 'recipe',
  check: (context) => reportMissing(context, BAG),
});

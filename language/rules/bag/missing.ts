import { text } from '../../../calc/figure/figure.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

export const bagMissing = rule({
  name: 'bag/missing',
  severity: 'error',
  title: 'a process under vacuum without a bag',
  on: 'recipe',
  check(context) {
    const hot = context.recipe.process?.kind === 'prepreg';
    reportMissing(context, {
      step: 'bag',
      kinds: ['bagged', 'infusion', 'prepreg'],
      message: text('no bag: without one there is no vacuum'),
      line: `bag ${hot ? 'film_75_hot' : 'film_50'}, pleats 12 of 50 mm`,
    });
  },
});

import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { lengthOrMore } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const peelMissing = rule({
  name: 'peel/missing',
  severity: 'error',
  title: 'an infusion without peel ply',
  on: 'recipe',
  check(context) {
    const trim = context.recipe.part?.trimAllowance;
    // past the cloth that runs out to the trim as well
    const cloth = trim === undefined || trim === UNKNOWN ? 0 : trim.si;
    reportMissing(context, {
      step: 'peel',
      kinds: ['infusion'],
      message: text('no peel ply: what lies on the stack is cured to the part'),
      line: `peel nylon_85, ${lengthOrMore(0.06, cloth + 0.03)} past edge`,
    });
  },
});

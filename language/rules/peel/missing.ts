import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { lengthOrMore } from '../kit/written.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Past the cloth that runs out to the trim as well. */
function lineOf({ recipe }: RecipeContext): string {
  const trim = recipe.part?.trimAllowance;
  const cloth = trim === undefined || trim === UNKNOWN ? 0 : trim.si;
  return `peel nylon_85, ${lengthOrMore(0.06, cloth + 0.03)} past edge`;
}

const PEEL: Wanted = {
  step: 'peel',
  kinds: ['infusion'],
  message: text('no peel ply: what lies on the stack is cured to the part'),
  line: lineOf,
};

export const peelMissing = rule({
  name: 'peel/missing',
  severity: 'error',
  title: 'an infusion without peel ply',
  on: 'recipe',
  check: (context) => reportMissing(context, PEEL),
});

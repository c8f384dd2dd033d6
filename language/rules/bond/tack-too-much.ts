import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { allSaid, amountOf, subject } from '../../../calc/plan/reading.ts';
import { AREAL_WEIGHT } from '../../../calc/quantity/index.ts';
import { mendText } from '../kit/mend-text.ts';
import { arealWeight, asTyped } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const MOST: Usual = {
  habit: 'tack_most',
  what: 'most spray adhesive',
  value: arealWeight(0.025),
  source: '10 to 25 g/m2, from memory',
};
/** What is written where the shop bears it, kg/m2. */
const USUAL = 0.015;
const WEIGHT = /\d+(?:\.\d+)?\s*(?:g\/m2|gsm)/;

export const bondTackTooMuch = rule({
  name: 'bond/tack-too-much',
  severity: 'warning',
  title: 'more spray adhesive than a mist',
  on: 'recipe',
  check(context) {
    const most = usual(context.bench, MOST);
    for (const { step } of stepsOf(context)) {
      if (step.verb !== 'tack' || !isKnown(most)) continue;
      const amount = amountOf(allSaid(step), AREAL_WEIGHT);
      if (amount === undefined || amount.si <= most.value + 1e-9) continue;
      const mist = asTyped(arealWeight(Math.min(USUAL, most.value)));
      context.report({
        at: step.path,
        message: text('{amount} of {tack}: over {most} it stays soft, keeps the resin out and parts the layers', {
          amount,
          tack: subject(step) ?? 'spray adhesive',
          most: arealWeight(most.value),
        }),
        fixes: [mendText(context, text('A mist of {what}', { what: mist }), step.path, WEIGHT, mist)],
      });
    }
  },
});

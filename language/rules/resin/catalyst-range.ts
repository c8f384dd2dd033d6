import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { againstRange, typedDoses } from '../kit/doses.ts';
import { mendText, TYPED_SHARE } from '../kit/mend-text.ts';
import { asTyped, share } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const resinCatalystRange = rule({
  name: 'resin/catalyst-range',
  severity: 'error',
  title: 'a dose of catalyst outside the range of the resin',
  on: 'recipe',
  check(context) {
    for (const typed of typedDoses(context)) {
      const found = againstRange(context, typed);
      if (found === undefined || found.off === 0 || found.fact.value === UNKNOWN) continue;
      const { fact, range, dose, off } = found;
      const { amount, path, resin } = typed;
      const shown = {
        dose: share(dose),
        resin: resin.name,
        catalyst: found.fact.value.material,
        low: share(range.low.si),
        high: share(range.high.si),
      };
      const right = asTyped(off < 0 ? shown.low : shown.high);
      context.report({
        at: path,
        message:
          off < 0
            ? text(
                '{dose} of {catalyst} is too little: {resin} takes {low} to {high}, with less it never cures fully',
                shown,
              )
            : text(
                '{dose} of {catalyst} is too much: {resin} takes {low} to {high}, with more it boils, cracks and may not cure at all',
                shown,
              ),
        related: [{ at: fact.at, message: text('{resin} takes {low} to {high} of {catalyst}', shown) }],
        fixes:
          amount.basis === range.low.basis
            ? [mendText(context, text('Take {what}', { what: right }), path, TYPED_SHARE, right)]
            : [],
      });
    }
  },
});

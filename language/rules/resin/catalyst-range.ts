import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { weightDoseOf } from '../../../calc/resin/catalyst.ts';
import { typedDoses } from '../kit/doses.ts';
import { mendText, TYPED_SHARE } from '../kit/mend-text.ts';
import { asTyped, share } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const resinCatalystRange = rule({
  name: 'resin/catalyst-range',
  severity: 'error',
  title: 'a dose of catalyst outside the range of the resin',
  on: 'recipe',
  check(context) {
    for (const { resin, amount, path } of typedDoses(context)) {
      const fact = resin.catalyst;
      if (fact === undefined || fact.value === UNKNOWN || fact.value.range === undefined) continue;
      const { range, material } = fact.value;
      const [own, of] = [context.bench.material(material)?.density?.value, resin.density?.value];
      const byVolume = amount.basis === 'by volume' && range.low.basis !== 'by volume';
      const dose = !byVolume
        ? amount.si
        : own === undefined || own === UNKNOWN || of === undefined || of === UNKNOWN
          ? undefined
          : weightDoseOf(amount.si, own.si, of.si);
      if (
        typeof dose !== 'number' ||
        amount.basis === undefined ||
        (dose >= range.low.si - 1e-6 && dose <= range.high.si + 1e-6)
      )
        continue;
      const low = dose < range.low.si;
      const shown = {
        dose: share(dose),
        resin: resin.name,
        catalyst: material,
        low: share(range.low.si),
        high: share(range.high.si),
      };
      const right = asTyped(low ? shown.low : shown.high);
      context.report({
        at: path,
        message: low
          ? text(
              '{dose} of {catalyst} is too little: {resin} takes {low} to {high}, with less it never cures fully',
              shown,
            )
          : text(
              '{dose} of {catalyst} is too much: {resin} takes {low} to {high}, with more it boils, cracks and may not cure at all',
              shown,
            ),
        related: [{ at: fact.at, message: text('{resin} takes {low} to {high} of {catalyst}', shown) }],
        fixes: byVolume ? [] : [mendText(context, `Take ${right}`, path, TYPED_SHARE, right)],
      });
    }
  },
});

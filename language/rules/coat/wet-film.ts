import { text, type Usual } from '../../../calc/figure/index.ts';
import { type AmountRange, UNKNOWN } from '../../../calc/model/index.ts';
import { LENGTH, sameDimension } from '../../../calc/quantity/index.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { wettedLayers } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

/** Where the gelcoat does not say it itself. */
const USUAL: { readonly low: Usual['value']; readonly high: Usual['value']; readonly source: string } = {
  low: metres(400e-6),
  high: metres(600e-6),
  source: "16 to 24 mil; 18 to 25 mil in a moulder's trade blog, 2009",
};

export const coatWetFilm = rule({
  name: 'coat/wet-film',
  severity: 'error',
  title: 'a gelcoat is put on too thin or too thick',
  on: 'recipe',
  check(context) {
    for (const { laid, resin } of wettedLayers(context)) {
      const { film, waxed } = laid.layer;
      if (
        laid.layer.kind !== 'coat' ||
        resin.kind !== 'gelcoat' ||
        waxed === true ||
        film?.wet !== true ||
        !sameDimension(film.amount.dimension, LENGTH)
      )
        continue;
      const own = resin.wetFilm?.value;
      const range: Pick<AmountRange, 'low' | 'high'> = own === undefined || own === UNKNOWN ? USUAL : own;
      const { si } = film.amount;
      const tolerance = 1e-9;
      if (si >= range.low.si - tolerance && si <= range.high.si + tolerance) continue;
      const shown = { film: film.amount, gelcoat: resin.name, low: range.low, high: range.high };
      const right = asTyped(si < range.low.si ? range.low : range.high);
      context.report({
        at: laid.path,
        message:
          si < range.low.si
            ? text(
                '{film} wet is too thin for {gelcoat}: under {low} it stays soft and wrinkles under the laminate',
                shown,
              )
            : text('{film} wet is too thick for {gelcoat}: over {high} it cracks', shown),
        ...(resin.wetFilm === undefined
          ? {}
          : { related: [{ at: resin.wetFilm.at, message: text('{gelcoat} takes {low} to {high} wet', shown) }] }),
        fixes: [mendText(context, text('Put on {what}', { what: right }), laid.path, TYPED_LENGTH, right)],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';

import { clauseAt, factValue, layersOf, onePerLine, typedLength } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Shortest overlap, m. 25 to 50 mm for small craft, from memory; `habit overlap` of the shop sets its own. */
const usualOverlap = 0.025;

export const joinOverlapShort = rule({
  name: 'join/overlap-short',
  severity: 'warning',
  title: 'two pieces of a ply overlap too little',
  on: 'recipe',
  check(context) {
    const least = factValue(context.book.shop?.habits?.overlap)?.amounts[0]?.si ?? usualOverlap;
    for (const laid of onePerLine(layersOf(context))) {
      const join = laid.layer.joins?.find(
        ({ kind, lap }) => kind === 'lap' && lap !== undefined && lap.si < least - 1e-9,
      );
      const lap =
        join?.lap ?? (laid.layer.lap !== undefined && laid.layer.lap.si < least - 1e-9 ? laid.layer.lap : undefined);
      if (lap === undefined) continue;
      const at = join === undefined ? clauseAt(laid, 'lap') : clauseAt(laid, 'join');
      context.report({
        at,
        message: text('the pieces of {ply} overlap by {lap}; {least} or more carry across', {
          ply: laid.name,
          lap,
          least: metres(least),
        }),
        fixes: [
          join === undefined
            ? context.edit.replace(
                text('Write lap {what}', { what: typedLength(least) }),
                at,
                `lap ${typedLength(least)}`,
              )
            : undefined,
        ],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, layersOf, onePerLine, typedLength } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { metres } from '../kit/shown.ts';
import { OVERLAP } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const joinOverlapShort = rule({
  name: 'join/overlap-short',
  severity: 'warning',
  title: 'two pieces of a ply overlap too little',
  on: 'recipe',
  check(context) {
    const least = habitOf(context.bench, OVERLAP);
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
            : mendText(
                context,
                text('Write lap {what}', { what: typedLength(least) }),
                at,
                TYPED_LENGTH,
                typedLength(least),
              ),
        ],
      });
    }
  },
});

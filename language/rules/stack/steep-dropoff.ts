import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { clauseAt, layersOf, onePerLine, typedLength, valueOf } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { runOutOf } from '../kit/run-out.ts';
import { arealWeight, metres } from '../kit/shown.ts';
import { linesOf } from '../kit/uses.ts';
import { rule } from '../rule.ts';

/** The length of a drop; the end that it is at stays. */
const DROP = new RegExp(`drop\\s+${TYPED_LENGTH.source}`);

export const stackSteepDropoff = rule({
  name: 'stack/steep-dropoff',
  severity: 'warning',
  title: 'copies of a ply end too close to each other',
  on: 'recipe',
  check(context) {
    const drops = linesOf(context.recipe.stack?.items ?? []).filter(({ kind }) => kind === 'repeat');
    if (drops.length === 0) return;
    for (const laid of onePerLine(layersOf(context).filter(isCloth))) {
      const group = drops.find(
        (item) =>
          item.kind === 'repeat' &&
          item.items.some((inner) => inner.kind !== 'repeat' && inner.kind !== 'mirror' && inner.path === laid.path),
      );
      const drop = laid.layer.drop ?? (group?.kind === 'repeat' ? group.drop : undefined);
      if (drop === undefined || group === undefined) continue;
      const weight = valueOf(context.ask(layerArealWeight, laid.key));
      if (weight === undefined) continue;
      const wanted = runOutOf(context.bench, weight);
      if (drop.by.si >= wanted - 1e-6) continue;
      const at = laid.layer.drop === undefined ? group.path : clauseAt(laid, 'drop');
      context.report({
        at,
        message: text('each copy of {ply} ends {drop} inside the one before; {weight} of cloth wants {wanted}', {
          ply: laid.layer.name,
          drop: drop.by,
          weight: arealWeight(weight),
          wanted: metres(wanted),
        }),
        fixes: [
          mendText(
            context,
            text('Write drop {what}', { what: typedLength(wanted) }),
            at,
            DROP,
            `drop ${typedLength(wanted)}`,
          ),
        ],
      });
    }
  },
});

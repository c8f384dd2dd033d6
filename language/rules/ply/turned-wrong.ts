import { text } from '../../../calc/figure/index.ts';
import { layerCloth } from '../../../calc/laminate/fraction.figure.ts';
import { laidDirections } from '../../../calc/stack/directions.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { clauseAt, layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

/** Directions that are told apart, rad. */
const near = 1e-6;

export const plyTurnedWrong = rule({
  name: 'ply/turned-wrong',
  severity: 'warning',
  title: 'turning the piece over changes nothing',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(layersOf(context).filter(isCloth))) {
      const { layer } = laid;
      if (layer.turnedOver !== true || layer.angle === undefined) continue;
      const cloth = valueOf(context.ask(layerCloth, laid.key));
      if (cloth?.style !== 'stitched' || cloth.layers.length < 2) continue;
      const [lying, over] = [laidDirections(cloth, layer.angle.si, false), laidDirections(cloth, layer.angle.si, true)];
      const same = lying.every(
        (sheet, i) =>
          Math.abs(sheet.arealWeight - (over[i]?.arealWeight ?? 0)) < near &&
          Math.abs((sheet.angle ?? 0) - (over[i]?.angle ?? 0)) < near,
      );
      if (!same) continue;
      context.report({
        at: clauseAt(laid, 'turned'),
        message: text('turned over, {material} lies as it did before: its mirror image takes a quarter turn', {
          material: layer.material ?? '',
        }),
        fixes: [context.edit.replace('Write turned 90 deg', clauseAt(laid, 'turned'), 'turned 90 deg')],
      });
    }
  },
});

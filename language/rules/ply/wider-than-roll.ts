import { layerPiece } from '../../../calc/cloth/area.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { factValue, layersOf, materialOf, onePerLine, valueOf } from '../kit/layers.ts';
import { usualLap } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const plyWiderThanRoll = rule({
  name: 'ply/wider-than-roll',
  severity: 'info',
  title: 'a piece is wider than its roll and nothing is said of the join',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(layersOf(context))) {
      const { layer } = laid;
      if (layer.kind !== 'ply' || layer.lap !== undefined || layer.joins !== undefined) continue;
      const lanes = valueOf(context.ask(layerPiece, laid.key))?.lanes;
      const roll = factValue(materialOf(context, laid)?.roll)?.width;
      if (lanes === undefined || roll === undefined) continue;
      const lap = `lap ${usualLap(context.bench)}`;
      context.report({
        at: laid.path,
        message: text(
          '{ply} is wider than the roll of {roll}: say how it is joined, or it is cut in lanes with the usual lap',
          { ply: laid.name, roll },
        ),
        fixes: [context.edit.addClause(text('Add {what}', { what: lap }), laid.path, lap)],
      });
    }
  },
});

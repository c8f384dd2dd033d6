import { DART_GAP } from '../../../calc/cloth/habits.ts';
import { text, usual } from '../../../calc/figure/index.ts';
import { isDarted, placedDarts } from '../../../calc/piece/darts.figure.ts';
import { nearestSeams, seamsOnEachOther } from '../../../calc/piece/seams.ts';
import { clauseAt, layersOf, valueOf } from '../kit/layers.ts';
import { placeShown } from '../kit/points.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const dartAligned = rule({
  name: 'dart/aligned',
  severity: 'warning',
  title: 'the darts of two wrapped plies fall on each other',
  on: 'recipe',
  check(context) {
    const darted = layersOf(context).filter(isDarted);
    const apart = valueOf(usual(context.bench, DART_GAP));
    const told = new Set<string>();
    for (const [i, laid] of darted.entries()) {
      const before = darted[i - 1];
      if (before === undefined || apart === undefined || told.has(laid.path)) continue;
      const [below, own] = [before, laid].map((ply) => valueOf(context.ask(placedDarts, ply.key)));
      if (below === undefined || own === undefined) continue;
      const on = seamsOnEachOther(own, below, apart);
      const worst = nearestSeams(on, below);
      if (worst === undefined) continue;
      told.add(laid.path);
      const shown = {
        count: on.length,
        ply: laid.name,
        before: before.name,
        apart: metres(apart),
        nearest: metres(worst.apart),
        ...placeShown(worst.of.mouth),
      };
      context.report({
        at: clauseAt(laid, 'darts'),
        message:
          on.length === 1
            ? text(
                'a dart of {ply} lies less than {apart} from one of {before} below it, {nearest}, at ({x}, {y}): there the edge is cut through both',
                shown,
              )
            : text(
                '{count} darts of {ply} lie less than {apart} from those of {before} below it, the nearest {nearest}, at ({x}, {y}): there the edge is cut through both',
                shown,
              ),
        related: [
          { at: { entry: context.recipe.entry, path: clauseAt(before, 'darts') }, message: text('the darts below') },
        ],
        fixes: [
          laid.layer.darts === 'auto'
            ? undefined
            : context.edit.replace('Write darts auto', clauseAt(laid, 'darts'), 'darts auto'),
        ],
      });
    }
  },
});

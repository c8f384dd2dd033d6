import { STAGGER } from '../../../calc/cloth/habits.ts';
import { text, usual } from '../../../calc/figure/index.ts';
import { type Joins, joinPoint, layerJoins, nearJoin } from '../../../calc/piece/joins.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { clauseAt, layersOf, ofKind, valueOf } from '../kit/layers.ts';
import { placeShown } from '../kit/points.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const clauseOf = (laid: LaidLayer): string =>
  laid.layer.joins !== undefined
    ? clauseAt(laid, 'join')
    : laid.layer.lap !== undefined
      ? clauseAt(laid, 'lap')
      : laid.path;

export const joinAligned = rule({
  name: 'join/aligned',
  severity: 'warning',
  title: 'the joins of plies that follow each other stand above each other',
  on: 'recipe',
  check(context) {
    const apart = valueOf(usual(context.bench, STAGGER));
    const plies = ofKind(layersOf(context), 'ply');
    const joins = plies.map((laid): Joins | undefined => valueOf(context.ask(layerJoins, laid.key)));
    const told = new Set<string>();
    for (const [i, laid] of plies.entries()) {
      const [before, own, below] = [plies[i - 1], joins[i], joins[i - 1]];
      if (before === undefined || apart === undefined || told.has(laid.path)) continue;
      const near = own === undefined || below === undefined ? undefined : nearJoin(own, below, apart);
      if (own === undefined || near === undefined) continue;
      told.add(laid.path);
      context.report({
        at: clauseOf(laid),
        message: text('the join of {ply} through ({x}, {y}) stands less than {apart} from that of {before} below it', {
          ply: laid.name,
          apart: metres(apart),
          before: before.name,
          ...placeShown(joinPoint(own, near)),
        }),
        related: [{ at: { entry: context.recipe.entry, path: clauseOf(before) }, message: text('the join below') }],
      });
    }
  },
});

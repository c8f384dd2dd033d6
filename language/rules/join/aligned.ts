import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { partFrame, placedPoint } from '../../../calc/outline/part.figure.ts';
import { clauseAt, factValue, layersOf, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** How far joins of successive plies stand apart, m: 25 to 38 mm in a trade magazine of 2021; `habit stagger` sets its own. */
const usualStagger = 0.025;

export const joinAligned = rule({
  name: 'join/aligned',
  severity: 'warning',
  title: 'the joins of plies that follow each other stand above each other',
  on: 'recipe',
  check(context) {
    const apart = factValue(context.book.shop?.habits?.stagger)?.amounts[0]?.si ?? usualStagger;
    const frame = valueOf(context.ask(partFrame));
    const plies = layersOf(context).filter(({ layer }) => layer.kind === 'ply');
    const told = new Set<string>();
    for (const [i, laid] of plies.entries()) {
      const before = plies[i - 1];
      if (before === undefined || frame === undefined || told.has(laid.path)) continue;
      const pairs = (laid.layer.joins ?? []).flatMap((join) =>
        (before.layer.joins ?? []).map((other) => [placedPoint(frame, join.at), placedPoint(frame, other.at)] as const),
      );
      const near = pairs.some(
        ([a, b]) =>
          !isImpossible(a) &&
          !isImpossible(b) &&
          Math.hypot(a.x + laid.stagger - b.x - before.stagger, a.y - b.y) < apart - 1e-9,
      );
      if (!near) continue;
      told.add(laid.path);
      context.report({
        at: clauseAt(laid, 'join'),
        message: text('the join of {ply} stands less than {apart} from that of {before} below it', {
          ply: laid.name,
          apart: metres(apart),
          before: before.name,
        }),
        related: [
          { at: { entry: context.recipe.entry, path: clauseAt(before, 'join') }, message: text('the join below') },
        ],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { placedContour } from '../../../calc/piece/footprint-contour.ts';
import { chordsOn, onLine } from '../../../calc/piece/half-plane.ts';
import { type Joins, joinLine, layerJoins } from '../../../calc/piece/joins.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { footprintOf } from '../kit/geometry.ts';
import { clauseAt, layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { placeShown } from '../kit/points.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Where a join runs over something that carries load: a strip, a patch or an insert; the middle of the way over it. */
function crossedBy(
  context: RecipeContext,
  under: LaidLayer,
  joins: Joins,
): { readonly under: LaidLayer; readonly at: Point } | undefined {
  const { kind } = under.layer;
  const footprint =
    kind === 'strip' || kind === 'patch' || kind === 'insert' ? footprintOf(context.bench, under) : undefined;
  const contour = footprint === undefined ? undefined : placedContour(footprint.placed);
  if (contour === undefined || isImpossible(contour)) return undefined;
  for (const join of joins.at) {
    const line = joinLine(joins, join);
    const [chord] = chordsOn(contour, line);
    if (chord !== undefined) return { under, at: onLine(line, (chord[0] + chord[1]) / 2) };
  }
  return undefined;
}

export const plyJoinInHighLoad = rule({
  name: 'ply/join-in-high-load',
  severity: 'warning',
  title: 'a butt join lies where the load runs',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const laid of onePerLine(layers)) {
      if (laid.layer.joins?.some(({ kind }) => kind === 'butt') !== true) continue;
      const joins = valueOf(context.ask(layerJoins, laid.key));
      if (joins === undefined || joins.lap > 0) continue;
      const found = layers.flatMap((other) => crossedBy(context, other, joins) ?? []);
      const [first] = found;
      if (first === undefined) continue;
      const { under, at } = first;
      context.report({
        at: clauseAt(laid, 'join'),
        message: text(
          'the butt join of {ply} lies over {under} at ({x}, {y}), where the load runs: a butt join carries nothing across; lap it, or move it',
          { ply: laid.name, under: under.name, ...placeShown(at) },
        ),
        related: [{ at: { entry: context.recipe.entry, path: under.path }, message: text('what carries there') }],
        fixes: [context.edit.replace('Write join lap 50 mm', clauseAt(laid, 'join'), 'join lap 50 mm')],
      });
    }
  },
});

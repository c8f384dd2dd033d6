import { STAGGER } from '../../../calc/cloth/habits.ts';
import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { placedContour } from '../../../calc/piece/footprint-contour.ts';
import { chordsOn, onLine } from '../../../calc/piece/half-plane.ts';
import { type Joins, joinLine, layerJoins } from '../../../calc/piece/joins.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { type Joint, jointOf } from '../kit/core-gaps.ts';
import { footprintOf } from '../kit/geometry.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { mendText } from '../kit/mend-text.ts';
import { placeShown } from '../kit/points.ts';
import { usualLap } from '../kit/written.ts';
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
      const first = layers.flatMap((other) => crossedBy(context, other, joins) ?? [])[0];
      if (first === undefined) {
        reportOverJoint(context, layers, laid, joins);
        continue;
      }
      const { under, at } = first;
      const lap = `lap ${usualLap(context.bench)}`;
      context.report({
        at: clauseAt(laid, 'join'),
        message: text(
          'the butt join of {ply} lies over {under} at ({x}, {y}), where the load runs: a butt join carries nothing across; lap it, or move it',
          { ply: laid.name, under: under.name, ...placeShown(at) },
        ),
        related: [{ at: { entry: context.recipe.entry, path: under.path }, message: text('what carries there') }],
        fixes: [mendText(context, text('Write {what}', { what: `join ${lap}` }), clauseAt(laid, 'join'), 'butt', lap)],
      });
    }
  },
});

/** The first two pieces of core whose joint a join runs along, nearer than joins are staggered. */
function jointUnder(
  context: RecipeContext,
  layers: readonly LaidLayer[],
  joins: Joins,
): readonly [LaidLayer, LaidLayer] | undefined {
  const near = habitOf(context.bench, STAGGER);
  const cores = layers.filter(({ layer }) => layer.kind === 'core' && layer.extent.kind !== 'net');
  const along = ({ axis, gap, at }: Joint): boolean =>
    gap < near &&
    joins.at
      .map((join) => joinLine(joins, join))
      .some(({ normal, from }) => {
        const square = Math.abs(normal[axis]) > 1 - 1e-6;
        return square && Math.abs(from * normal[axis] - at) < near - 1e-9;
      });
  for (const [i, core] of cores.entries())
    for (const other of cores.slice(0, i)) {
      const joint = jointOf(footprintOf(context.bench, other)?.placed, footprintOf(context.bench, core)?.placed);
      if (joint !== undefined && along(joint)) return [other, core];
    }
  return undefined;
}

/** A butt join that runs along the joint of two pieces of core: skin and core part at one line. */
function reportOverJoint(context: RecipeContext, layers: readonly LaidLayer[], laid: LaidLayer, joins: Joins): void {
  const found = jointUnder(context, layers, joins);
  if (found === undefined) return;
  const lap = `lap ${usualLap(context.bench)}`;
  const shown = { ply: laid.name, core: found[1].name, other: found[0].name };
  context.report({
    at: clauseAt(laid, 'join'),
    message: text(
      'the butt join of {ply} runs along the joint of {other} and {core}: skin and core part at one line; lap it, or move it',
      shown,
    ),
    related: found.map((piece) => ({
      at: { entry: context.recipe.entry, path: piece.path },
      message: text('{core} ends there', { core: piece.name }),
    })),
    fixes: [mendText(context, text('Write {what}', { what: `join ${lap}` }), clauseAt(laid, 'join'), 'butt', lap)],
  });
}

import { isImpossible } from '../../../calc/outcome.ts';
import { signedDistance } from '../../../calc/outline/distance.ts';
import { samples } from '../../../calc/outline/samples.ts';
import { intoFrame, outOfFrame, type Placed, type Point } from '../../../calc/outline/shape.ts';
import type { Footprint } from '../../../calc/stack/footprint.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { footprintOf, partPlaced } from './geometry.ts';
import { layersOf } from './layers.ts';

/** How closely an edge is walked along, m. */
const STEP = 0.02;
/** What a piece of core may end short of the finished edge and still reach it, m. */
const REACHES = 0.001;

/** How far a point lies outside a shape, negative inside it, m. */
export function outsideOf(placed: Placed, point: Point): number {
  const distance = signedDistance(placed.shape, intoFrame(placed, point));
  return isImpossible(distance) ? Infinity : distance;
}

/**
 * Where a piece of core with a shape of its own ends, point by point: at the finished edge, against another core or an insert that is
 * nearer than `gap` (m), or inside the skins. Undefined for a core that is cut to the outline.
 */
export function endsOf(
  context: RecipeContext,
  core: LaidLayer,
  gap: number,
): { readonly atEdge: boolean; readonly insideSkins: boolean } | undefined {
  const own = footprintOf(context.bench, core);
  const part = partPlaced(context.bench);
  if (own === undefined || own.whole || part === undefined) return undefined;
  const points = samples(own.placed.shape, STEP);
  if (isImpossible(points)) return undefined;
  const around = layersOf(context).flatMap((laid): readonly Footprint[] => {
    const solid = laid.layer.kind === 'core' || laid.layer.kind === 'insert';
    const there = solid && laid.key !== core.key ? footprintOf(context.bench, laid) : undefined;
    return there === undefined ? [] : [there];
  });
  let [atEdge, insideSkins] = [false, false];
  for (const point of points.map((each) => outOfFrame(own.placed, each))) {
    if (outsideOf(part, point) >= -REACHES) atEdge = true;
    else if (!around.some(({ placed, inset }) => outsideOf(placed, point) + inset <= gap)) insideSkins = true;
  }
  return { atEdge, insideSkins };
}

import { isImpossible } from '../../../calc/outcome.ts';
import { signedDistance } from '../../../calc/outline/distance.ts';
import { shapeBounds } from '../../../calc/outline/measure.ts';
import { outOfFrame, type Placed } from '../../../calc/outline/shape.ts';
import { covers, type Footprint } from '../../../calc/stack/footprint.figure.ts';

/** Points looked at along each side of a shape: an edge is found to a twentieth of it. */
const POINTS = 20;

/** The share of a shape (0 to 1) under which the core lies and none of the solid pieces; 0 where it cannot be told. */
export function bareUnder(placed: Placed, core: Footprint, solid: readonly Footprint[]): number {
  const bounds = shapeBounds(placed.shape);
  if (isImpossible(bounds)) return 0;
  const { low, high } = bounds;
  const at = (from: number, to: number, i: number): number => from + ((to - from) * (i + 0.5)) / POINTS;
  let inside = 0;
  let bare = 0;
  for (let i = 0; i < POINTS; i++) {
    for (let j = 0; j < POINTS; j++) {
      const own = { x: at(low.x, high.x, i), y: at(low.y, high.y, j) };
      const distance = signedDistance(placed.shape, own);
      if (isImpossible(distance)) return 0;
      if (distance > 0) continue;
      inside++;
      const point = outOfFrame(placed, own);
      if (covers(core, point) === true && !solid.some((piece) => covers(piece, point) === true)) bare++;
    }
  }
  return inside === 0 ? 0 : bare / inside;
}

import { finite, given, notNegative, type Outcome } from '../outcome.ts';
import { offsetArea } from '../outline/offset.ts';
import type { Shape } from '../outline/shape.ts';

/**
 * Area (m2) of a sheet laid over a part: out to `past` (m) beyond its outline, or short of it where negative; one that
 * goes past the edge also climbs the stack's `height` (m) all round. It is cut flat, as far out as it goes and climbs
 * together (Steiner 1840: A + P d + pi d2 round a convex outline). Peel ply, mesh, perforated film, breather.
 */
export function sheetOver(outline: Shape, past: number, height = 0): Outcome {
  return given([finite('the distance past the edge', past), notNegative('the height of the stack', height)], () =>
    offsetArea(outline, past < 0 ? past : past + height),
  );
}

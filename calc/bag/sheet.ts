import { finite, following, given, notNegative, type Outcome } from '../outcome.ts';
import { shapePerimeter } from '../outline/measure.ts';
import { offsetArea } from '../outline/offset.ts';
import type { Shape } from '../outline/shape.ts';

/**
 * Area (m2) of a sheet laid over a part: out to `past` (m) beyond its outline, or short of it where negative; one that
 * goes past the edge also climbs the stack's `height` (m) all round. Peel ply, mesh, perforated film, breather.
 */
export function sheetOver(outline: Shape, past: number, height = 0): Outcome {
  return given([finite('the distance past the edge', past), notNegative('the height of the stack', height)], () =>
    following(offsetArea(outline, past), (area) => {
      if (past < 0) return area;
      return following(shapePerimeter(outline), (perimeter) => area + perimeter * height);
    }),
  );
}

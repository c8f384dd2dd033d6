import { type Segment, segmentBox, segmentsOf } from '../outline/arc.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';

/** The straights and arcs of a drawn line; those of an open one end at its last point. */
export const ways = (points: Contour, closed: boolean): readonly Segment[] =>
  closed ? segmentsOf(points) : segmentsOf(points).slice(0, -1);

/** Points that a box round a line must hold. */
export function outermost(points: Contour, closed: boolean): Point[] {
  const corners = ways(points, closed).flatMap((way) => {
    const [left, low, right, high] = segmentBox(way);
    return [
      { x: left, y: low },
      { x: right, y: high },
    ];
  });
  return [...points, ...corners];
}

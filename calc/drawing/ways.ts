import { pointOf, type Segment, segmentBox, segmentsOf } from '../outline/arc.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';

/** The straights and arcs of a drawn line; those of an open one end at its last point. */
export const ways = (points: Contour, closed: boolean): readonly Segment[] =>
  closed ? segmentsOf(points) : segmentsOf(points).slice(0, -1);

/** Points on a line whose chords leave its arcs by no more than `tolerance` (m). The first is not repeated at the end of a closed line. */
export function flattened(points: Contour, closed: boolean, tolerance: number): Point[] {
  const flat: Point[] = [];
  for (const way of ways(points, closed)) {
    flat.push(way.from);
    if (way.arc === undefined) continue;
    const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / way.arc.radius));
    const count = Math.max(2, Math.ceil(Math.abs(way.arc.sweep) / Math.max(widest, 1e-3)));
    for (let i = 1; i < count; i++) flat.push(pointOf(way, i / count));
  }
  const end = points.at(-1);
  if (!closed && end !== undefined) flat.push(end);
  return flat;
}

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

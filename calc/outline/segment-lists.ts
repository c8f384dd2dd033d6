/** Numbers of all segments of a contour in flat lists, worked out once and kept with it. */
import { onceFor } from '../kept.ts';
import { boxInto, segmentsOf, wrapped } from './arc.ts';
import type { Contour } from './contour.ts';

/** Left, low, right and high (m) of the upright box round each segment: four numbers a segment. */
export const boxesOf = onceFor((contour: Contour) => {
  const segments = segmentsOf(contour);
  const boxes = new Float64Array(4 * segments.length);
  for (let i = 0; i < segments.length; i++) boxInto(boxes, 4 * i, segments[i]!);
  return boxes;
});

/** The heading (rad) with which each segment begins, and that with which it ends: two numbers a segment. */
export const headingsOf = onceFor((contour: Contour) => {
  const segments = segmentsOf(contour);
  const list = new Float64Array(2 * segments.length);
  for (let i = 0; i < segments.length; i++) {
    const { from, to, arc } = segments[i]!;
    const along = Math.atan2(to.y - from.y, to.x - from.x);
    const half = arc === undefined ? 0 : arc.sweep / 2;
    list[2 * i] = along - half;
    list[2 * i + 1] = along + half;
  }
  return list;
});

/** The turn (rad, positive to the left) at the end of each segment, on to the next one. */
export const turnsOf = onceFor((contour: Contour) => {
  const headings = headingsOf(contour);
  const n = headings.length / 2;
  const list = new Float64Array(n);
  for (let i = 0; i < n; i++) list[i] = wrapped(headings[2 * (i + 1 < n ? i + 1 : 0)]! - headings[2 * i + 1]!);
  return list;
});

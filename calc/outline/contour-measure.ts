import { onceFor } from '../kept.ts';
import { lengthOf, segmentLength, segmentsOf } from './arc.ts';
import type { Contour, Vertex } from './contour.ts';
import { boxesOf, turnsOf } from './segment-lists.ts';
import type { Point } from './shape.ts';

/** Signed area inside a contour, m2: by Green's theorem, chord by chord and the sagittas of its arcs. */
export const contourArea = onceFor((contour: Contour): number => {
  const origin = contour[0];
  if (origin === undefined) return 0;
  let area = 0;
  for (const { from, to, arc } of segmentsOf(contour)) {
    area += ((from.x - origin.x) * (to.y - origin.y) - (to.x - origin.x) * (from.y - origin.y)) / 2;
    if (arc !== undefined) area += (arc.radius * arc.radius * (arc.sweep - Math.sin(arc.sweep))) / 2;
  }
  return area;
});

/** m */
export function contourPerimeter(contour: Contour): number {
  return segmentsOf(contour).reduce((sum, s) => sum + segmentLength(s), 0);
}

/** The low and high corner of the upright box round a contour, m; arcs beyond their ends included. */
export function contourBox(contour: Contour): readonly [Point, Point] {
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  const boxes = boxesOf(contour);
  for (let at = 0; at < boxes.length; at += 4) {
    left = Math.min(left, boxes[at]!);
    low = Math.min(low, boxes[at + 1]!);
    right = Math.max(right, boxes[at + 2]!);
    high = Math.max(high, boxes[at + 3]!);
  }
  return [
    { x: left, y: low },
    { x: right, y: high },
  ];
}

/** Whether a counter-clockwise contour bends nowhere inwards. */
export function isConvexContour(contour: Contour): boolean {
  return segmentsOf(contour).every((s) => s.bulge >= 0) && turnsOf(contour).every((turn) => turn > -1e-9);
}

/** The same line walked the other way. */
export function reversed(contour: Contour): Contour {
  const n = contour.length;
  return contour.map((_, i): Vertex => {
    const { x, y } = contour[n - 1 - i]!;
    const bulge = contour[(2 * n - 2 - i) % n]!.bulge ?? 0;
    return bulge === 0 ? { x, y } : { x, y, bulge: -bulge };
  });
}

/** Points nearer to each other than this share of the size of a contour are one. */
export const nearShare = 1e-9;

/**
 * Counter-clockwise, without points that stand on each other or on a straight edge. Arcs that go on on the same circle
 * stay as they are.
 */
export function tidiedContour(contour: Contour): Contour {
  const [low, high] = contourBox(contour);
  const near = Math.hypot(high.x - low.x, high.y - low.y) * nearShare;
  const apart = kept(contour, (v, i) => {
    const to = contour[i + 1 < contour.length ? i + 1 : 0]!;
    return lengthOf(to.x - v.x, to.y - v.y) > near;
  });
  const round = contourArea(apart) < 0 ? reversed(apart) : apart;
  const segments = segmentsOf(round);
  const turns = turnsOf(round);
  return kept(round, (_, i) => {
    const before = i > 0 ? i - 1 : segments.length - 1;
    return segments[before]!.bulge !== 0 || segments[i]!.bulge !== 0 || Math.abs(turns[before]!) > 1e-9;
  });
}

/** The same object where nothing is left out, with all that is known of it. */
function kept(contour: Contour, fit: (vertex: Vertex, i: number) => boolean): Contour {
  return contour.every(fit) ? contour : contour.filter(fit);
}

/** An open line walked the other way; the bulge of its last vertex says nothing. */
export function reversedLine(line: readonly Vertex[]): Vertex[] {
  const n = line.length;
  return line.map((_, i) => {
    const { x, y } = line[n - 1 - i]!;
    const bulge = line[n - 2 - i]?.bulge ?? 0;
    return bulge === 0 ? { x, y } : { x, y, bulge: -bulge };
  });
}

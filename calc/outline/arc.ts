import { onceFor } from '../kept.ts';
import type { Contour, Vertex } from './contour.ts';
import type { Point } from './shape.ts';

/** The circle that an arc lies on, and how it runs: from the angle `start`, by `sweep` (rad, positive to the left). */
export interface Arc {
  readonly centre: Point;
  /** m */
  readonly radius: number;
  /** rad */
  readonly start: number;
  /** rad */
  readonly sweep: number;
}

/** One straight or arc of a contour. */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  /** undefined for a straight; always there, so that all segments have one form in memory */
  readonly arc: Arc | undefined;
}

/** An arc whose middle lies nearer to its chord than this share of the chord is a straight: 0.5 nm on a metre. */
const straightBelow = 1e-9;

/** The arc between two points. Source: AutoCAD DXF reference, group code 42: bulge = tan(sweep / 4). */
export function arcBetween(from: Point, to: Point, bulge: number): Arc {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const chord = lengthOf(dx, dy);
  const aside = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + to.x) / 2 - dy * aside, y: (from.y + to.y) / 2 + dx * aside };
  return {
    centre,
    radius: (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(from.y - centre.y, from.x - centre.x),
    sweep: 4 * Math.atan(bulge),
  };
}

export const bulgeOf = (sweep: number): number => Math.tan(sweep / 4);

export function segment(from: Vertex, to: Point): Segment {
  const bulge = Math.abs(from.bulge ?? 0) < straightBelow ? 0 : (from.bulge ?? 0);
  return { from, to, bulge, arc: bulge === 0 ? undefined : arcBetween(from, to, bulge) };
}

/** The straights and arcs of a contour in order; segment i starts at vertex i. Kept with the contour. */
export const segmentsOf = onceFor((contour: Contour): readonly Segment[] => {
  const n = contour.length;
  const list: Segment[] = [];
  for (let i = 0; i < n; i++) list.push(segment(contour[i]!, contour[i + 1 < n ? i + 1 : 0]!));
  return list;
});

const chordOf = ({ from, to }: Segment): number => lengthOf(to.x - from.x, to.y - from.y);

/** The length of a vector. Parts are no larger than a country: nothing overflows that `Math.hypot`, five times as slow, would save. */
export const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** m */
export const segmentLength = (s: Segment): number => (s.arc ? s.arc.radius * Math.abs(s.arc.sweep) : chordOf(s));

/** The point at a share (0 to 1) of the length of a segment. */
export function pointOf(s: Segment, share: number): Point {
  if (share <= 0) return s.from;
  if (share >= 1) return s.to;
  if (s.arc === undefined)
    return { x: s.from.x + share * (s.to.x - s.from.x), y: s.from.y + share * (s.to.y - s.from.y) };
  return onCircle(s.arc, s.arc.start + share * s.arc.sweep);
}

export function onCircle({ centre, radius }: Pick<Arc, 'centre' | 'radius'>, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** The heading (rad) with which a segment leaves its first point, and that with which it comes to its last. */
export function headings(s: Segment): readonly [number, number] {
  const along = Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x);
  const half = 2 * Math.atan(s.bulge);
  return [along - half, along + half];
}

/** An angle brought between -pi and pi. */
export function wrapped(angle: number): number {
  const turn = 2 * Math.PI;
  const within = angle - turn * Math.round(angle / turn);
  return within <= -Math.PI ? within + turn : within;
}

/** Whether a direction from the centre of an arc meets the arc, ends included (`slack` rad). */
export function sweepsOver(arc: Arc, angle: number, slack = 0): boolean {
  const middle = arc.start + arc.sweep / 2;
  return Math.abs(wrapped(angle - middle)) <= Math.abs(arc.sweep) / 2 + slack;
}

/** The low and high corners of the upright box round a segment. */
export function segmentBox(s: Segment): readonly [number, number, number, number] {
  const box: [number, number, number, number] = [0, 0, 0, 0];
  boxInto(box, 0, s);
  return box;
}

/** Writes left, low, right and high of the upright box round a segment to a place of a list. */
export function boxInto(boxes: Float64Array | number[], at: number, { from, to, bulge, arc }: Segment): void {
  let left = Math.min(from.x, to.x);
  let right = Math.max(from.x, to.x);
  let low = Math.min(from.y, to.y);
  let high = Math.max(from.y, to.y);
  if (arc !== undefined) {
    // The outermost points of the circle lie on the arc where they lie on its side of the chord.
    const { centre, radius } = arc;
    const ex = to.x - from.x;
    const ey = to.y - from.y;
    const middle = ex * (centre.y - from.y) - ey * (centre.x - from.x);
    if ((middle - ey * radius) * bulge <= 0) right = Math.max(right, centre.x + radius);
    if ((middle + ey * radius) * bulge <= 0) left = Math.min(left, centre.x - radius);
    if ((middle + ex * radius) * bulge <= 0) high = Math.max(high, centre.y + radius);
    if ((middle - ex * radius) * bulge <= 0) low = Math.min(low, centre.y - radius);
  }
  boxes[at] = left;
  boxes[at + 1] = low;
  boxes[at + 2] = right;
  boxes[at + 3] = high;
}

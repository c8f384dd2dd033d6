import { onceFor } from '../kept.ts';
import { bulgeOf, headings, pointOf, type Segment, segmentLength, segmentsOf } from '../outline/arc.ts';
import type { Contour, Vertex } from '../outline/contour.ts';
import { nearestOnContour } from '../outline/contour-distance.ts';
import type { Point } from '../outline/shape.ts';

/** A contour measured along its length, so that a place on it is one number: m from its first point, in walking order. */
export interface Rim {
  readonly contour: Contour;
  readonly segments: readonly Segment[];
  /** where each segment begins, m; one more entry than segments: the whole length */
  readonly starts: Float64Array;
  /** m */
  readonly length: number;
}

export const rimOf = onceFor((contour: Contour): Rim => {
  const segments = segmentsOf(contour);
  const starts = new Float64Array(segments.length + 1);
  segments.forEach((s, i) => {
    starts[i + 1] = starts[i]! + segmentLength(s);
  });
  return { contour, segments, starts, length: starts[segments.length]! };
});

/** A place on a closed line brought between 0 and its length. */
export const onceRound = (place: number, length: number): number => ((place % length) + length) % length;

/** How far onwards on a closed line, the short way round: negative where that is backwards. */
export const shortWay = (off: number, length: number): number => onceRound(off + length / 2, length) - length / 2;

/** Which segment a place lies on (between 0 and the length), and how far along it, as a share of it. */
function segmentAt({ segments, starts }: Rim, place: number): readonly [segment: number, share: number] {
  let [low, high] = [0, segments.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= place) low = middle;
    else high = middle - 1;
  }
  const length = starts[low + 1]! - starts[low]!;
  return [low, length > 0 ? Math.min(1, (place - starts[low]!) / length) : 0];
}

/** The point at a place; beyond the end the line goes on at its beginning. */
export function pointAt(rim: Rim, place: number): Point {
  const [i, share] = segmentAt(rim, onceRound(place, rim.length));
  const { x, y } = pointOf(rim.segments[i]!, share);
  return { x, y };
}

/** The heading of the line at a place, rad from x. */
export function headingAt(rim: Rim, place: number): number {
  const [i, share] = segmentAt(rim, onceRound(place, rim.length));
  const [from, to] = headings(rim.segments[i]!);
  return from + share * (to - from);
}

/** The place on a line that is nearest to a point, and how far it is from there, m. */
export function placeNear(rim: Rim, p: Point): { readonly place: number; readonly distance: number } {
  const { segment, distance } = nearestOnContour(rim.contour, p);
  const s = rim.segments[segment]!;
  const length = rim.starts[segment + 1]! - rim.starts[segment]!;
  return { place: rim.starts[segment]! + shareNear(s, p) * length, distance };
}

/** How far along a segment its nearest point to `p` is, as a share of it. */
function shareNear({ from, to, arc }: Segment, p: Point): number {
  if (arc === undefined) {
    const [ex, ey] = [to.x - from.x, to.y - from.y];
    const along = ((p.x - from.x) * ex + (p.y - from.y) * ey) / (ex * ex + ey * ey);
    return Math.min(1, Math.max(0, along));
  }
  const turn = 2 * Math.PI;
  const angle = Math.atan2(p.y - arc.centre.y, p.x - arc.centre.x) - arc.start;
  const ahead = arc.sweep > 0 ? ((angle % turn) + turn) % turn : ((-angle % turn) + turn) % turn;
  const sweep = Math.abs(arc.sweep);
  if (ahead <= sweep) return ahead / sweep;
  // beyond its end or before its beginning, whichever is nearer
  return ahead - sweep < turn - ahead ? 1 : 0;
}

/** The vertices of the way from one place on to another (`to` at or after `from`); the last one without a bulge. */
export function wayBetween(rim: Rim, from: number, to: number): Vertex[] {
  const way: Vertex[] = [];
  const whole = Math.min(Math.max(0, to - from), rim.length);
  let place = onceRound(from, rim.length);
  let left = whole;
  let [i, share] = segmentAt(rim, place);
  for (let guard = 0; left > 0 && guard <= rim.segments.length + 1; guard++) {
    const s = rim.segments[i]!;
    const length = rim.starts[i + 1]! - rim.starts[i]!;
    const rest = length * (1 - share);
    if (share === 0 && left >= length && length > rim.length * 1e-14) {
      // a whole segment is what it is
      way.push(rim.contour[i]!);
      left -= length;
      place += length;
    } else if (rest > rim.length * 1e-14) {
      const taken = Math.min(rest, left);
      const { x, y } = pointOf(s, share);
      way.push(s.arc === undefined ? { x, y } : { x, y, bulge: bulgeOf((s.arc.sweep * taken) / length) });
      left -= taken;
      place += taken;
    }
    i = (i + 1) % rim.segments.length;
    share = 0;
  }
  way.push(pointAt(rim, from + whole));
  return way;
}

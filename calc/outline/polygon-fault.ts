import { text, type Words } from '../figure/figure.ts';
import { distanceBetween, signedArea } from './polygon.ts';
import type { Point } from './shape.ts';

/**
 * Why a list of points is no outline, with the place. Point and edge numbers count from 0; edge i starts at point i.
 */
export type PolygonFault =
  | { readonly kind: 'too few points'; readonly points: number }
  | { readonly kind: 'no number'; readonly point: number }
  | { readonly kind: 'same point twice'; readonly point: number; readonly at: Point }
  | { readonly kind: 'doubles back'; readonly point: number; readonly at: Point }
  | { readonly kind: 'crosses itself'; readonly edges: readonly [number, number]; readonly at: Point }
  | { readonly kind: 'no area' };

/**
 * The first fault of a closed polygon; undefined where it is a fit outline. Points nearer than 1e-9 of its size are
 * one.
 */
export function polygonFault(points: readonly Point[]): PolygonFault | undefined {
  const strange = points.findIndex((p) => !Number.isFinite(p.x) || !Number.isFinite(p.y));
  if (strange >= 0) return { kind: 'no number', point: strange };
  if (points.length < 3) return { kind: 'too few points', points: points.length };
  const size = extent(points);
  const near = size * 1e-9;
  const n = points.length;
  const twice = points.findIndex((p, i) => distanceBetween(p, points[(i + 1) % n]!) <= near);
  if (twice >= 0) return { kind: 'same point twice', point: (twice + 1) % n, at: points[(twice + 1) % n]! };
  const corner = points.findIndex((p, i) => doublesBack(points[i > 0 ? i - 1 : n - 1]!, p, points[(i + 1) % n]!, size));
  if (corner >= 0) return { kind: 'doubles back', point: corner, at: points[corner]! };
  const crossing = firstCrossing(points);
  if (crossing !== undefined) return crossing;
  return Math.abs(signedArea(points)) <= size * near ? { kind: 'no area' } : undefined;
}

/** The fault in words. */
export function faultWords(fault: PolygonFault): Words {
  switch (fault.kind) {
    case 'too few points':
      return text('an outline needs at least 3 points, this one has {points}', { points: fault.points });
    case 'no number':
      return text('point {number} of the outline has no place that can be told', { number: fault.point + 1 });
    case 'same point twice':
      return text('point {number} of the outline is the same as the one before it', { number: fault.point + 1 });
    case 'doubles back':
      return text('the outline doubles back on itself at point {number}', { number: fault.point + 1 });
    case 'crosses itself':
      return text('the outline crosses itself: the edge from point {one} meets the edge from point {other}', {
        one: fault.edges[0] + 1,
        other: fault.edges[1] + 1,
      });
    case 'no area':
      return 'the outline encloses no area';
  }
}

function extent(points: readonly Point[]): number {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return Math.hypot(right - left, high - low);
}

function doublesBack(a: Point, b: Point, c: Point, size: number): boolean {
  const cross = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
  const along = (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y);
  return along < 0 && Math.abs(cross) <= size * 1e-12 * Math.hypot(b.x - a.x, b.y - a.y);
}

/** Edges are swept by their left ends, so that only those whose spans in x overlap are compared. */
function firstCrossing(points: readonly Point[]): PolygonFault | undefined {
  const n = points.length;
  const [left, right] = [new Float64Array(n), new Float64Array(n)];
  const [low, high] = [new Float64Array(n), new Float64Array(n)];
  for (let i = 0; i < n; i++) {
    const [a, b] = [points[i]!, points[i + 1 < n ? i + 1 : 0]!];
    // meetings are told to within a rounding: so are the boxes of the edges
    const slack = 1e-11 * (Math.abs(b.x - a.x) + Math.abs(b.y - a.y));
    left[i] = Math.min(a.x, b.x) - slack;
    right[i] = Math.max(a.x, b.x) + slack;
    low[i] = Math.min(a.y, b.y) - slack;
    high[i] = Math.max(a.y, b.y) + slack;
  }
  const order = new Uint32Array(n).map((_, i) => i).sort((i, j) => left[i]! - left[j]!);
  const active = new Uint32Array(n);
  let count = 0;
  for (const i of order) {
    let still = 0;
    for (let k = 0; k < count; k++) {
      const j = active[k]!;
      if (right[j]! < left[i]!) continue;
      active[still++] = j;
      if (low[j]! > high[i]! || high[j]! < low[i]! || areNeighbours(i, j, n)) continue;
      const at = meeting(points[i]!, points[(i + 1) % n]!, points[j]!, points[(j + 1) % n]!);
      if (at !== undefined) return { kind: 'crosses itself', edges: i < j ? [i, j] : [j, i], at };
    }
    count = still;
    active[count++] = i;
  }
  return undefined;
}

const areNeighbours = (i: number, j: number, n: number) => (i + 1) % n === j || (j + 1) % n === i;

/** Where two edges meet or touch; of edges that lie on each other, one of the points that they share. */
function meeting(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const rx = b.x - a.x;
  const ry = b.y - a.y;
  const sx = d.x - c.x;
  const sy = d.y - c.y;
  const cross = rx * sy - ry * sx;
  const parallel = Math.abs(cross) <= 1e-12 * Math.hypot(rx, ry) * Math.hypot(sx, sy);
  if (parallel) return [c, d].find((p) => isOn(a, b, p)) ?? [a, b].find((p) => isOn(c, d, p));
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / cross;
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / cross;
  const slack = 1e-12;
  if (t < -slack || t > 1 + slack || u < -slack || u > 1 + slack) return undefined;
  return { x: a.x + t * rx, y: a.y + t * ry };
}

function isOn(a: Point, b: Point, p: Point): boolean {
  return distanceBetween(a, p) + distanceBetween(p, b) - distanceBetween(a, b) <= 1e-12 * distanceBetween(a, b);
}

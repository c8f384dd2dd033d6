import type { Point } from './shape.ts';

/**
 * Signed area of a closed polygon, m2: positive where its points run counter-clockwise (shoelace formula, Meister
 * 1769).
 */
export function signedArea(points: readonly Point[]): number {
  const from = points[0];
  if (from === undefined) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const a = points[i]!;
    const b = points[i + 1]!;
    twice += (a.x - from.x) * (b.y - from.y) - (b.x - from.x) * (a.y - from.y);
  }
  return twice / 2;
}

export const distanceBetween = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The edges of a closed polygon, in order; edge i runs from point i to the next. */
export function edges(points: readonly Point[]): (readonly [Point, Point])[] {
  return points.map((p, i) => [p, points[(i + 1) % points.length]!] as const);
}

/** The turn at the corner between two edges, rad: positive to the left. */
export function turnAt(before: Point, corner: Point, after: Point): number {
  const ax = corner.x - before.x;
  const ay = corner.y - before.y;
  const bx = after.x - corner.x;
  const by = after.y - corner.y;
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

/** The same polygon with its points counter-clockwise and without those that lie on a straight edge. */
export function tidied(points: readonly Point[]): Point[] {
  const round = signedArea(points) < 0 ? [...points].reverse() : points;
  const n = round.length;
  return round.filter((p, i) => Math.abs(turnAt(round[(i + n - 1) % n]!, p, round[(i + 1) % n]!)) > 1e-9);
}

/** Whether a counter-clockwise polygon has no inside corner. */
export function isConvex(points: readonly Point[]): boolean {
  const n = points.length;
  return points.every((p, i) => turnAt(points[(i + n - 1) % n]!, p, points[(i + 1) % n]!) > -1e-9);
}

/**
 * What is left of a convex counter-clockwise polygon when each edge moves inwards by `by` (m); empty where nothing is.
 */
export function convexInset(points: readonly Point[], by: number): Point[] {
  let left: Point[] = [...points];
  for (const [a, b] of edges(points)) {
    const length = distanceBetween(a, b);
    const nx = -(b.y - a.y) / length;
    const ny = (b.x - a.x) / length;
    const depth = (p: Point) => (p.x - a.x) * nx + (p.y - a.y) * ny - by;
    left = cut(left, depth);
    if (left.length < 3) return [];
  }
  return left;
}

/** The part of a convex polygon where `depth` is not negative (Sutherland and Hodgman 1974). */
function cut(points: readonly Point[], depth: (p: Point) => number): Point[] {
  const kept: Point[] = [];
  for (const [a, b] of edges(points)) {
    const da = depth(a);
    const db = depth(b);
    if (da >= 0) kept.push(a);
    if (da >= 0 !== db >= 0) {
      const t = da / (da - db);
      kept.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
    }
  }
  return kept;
}

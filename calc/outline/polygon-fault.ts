import { text, type Words } from '../figure/figure.ts';
import { distanceBetween, edges, signedArea } from './polygon.ts';
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
  const sides = edges(points);
  const twice = sides.findIndex(([a, b]) => distanceBetween(a, b) <= near);
  if (twice >= 0) return { kind: 'same point twice', point: (twice + 1) % points.length, at: sides[twice]![1] };
  const back = sides.findIndex((side, i) => doublesBack(side, sides[(i + 1) % sides.length]!, size));
  if (back >= 0) return { kind: 'doubles back', point: (back + 1) % points.length, at: sides[back]![1] };
  const crossing = firstCrossing(sides);
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

type Side = readonly [Point, Point];

function doublesBack([a, b]: Side, [, c]: Side, size: number): boolean {
  const cross = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
  const along = (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y);
  return along < 0 && Math.abs(cross) <= size * 1e-12 * Math.hypot(b.x - a.x, b.y - a.y);
}

/** Edges are swept by their left ends, so that only those whose spans in x overlap are compared. */
function firstCrossing(sides: readonly Side[]): PolygonFault | undefined {
  const left = ([a, b]: Side) => Math.min(a.x, b.x);
  const right = ([a, b]: Side) => Math.max(a.x, b.x);
  const order = sides.map((_, i) => i).sort((i, j) => left(sides[i]!) - left(sides[j]!));
  let active: number[] = [];
  for (const i of order) {
    const side = sides[i]!;
    active = active.filter((j) => right(sides[j]!) >= left(side));
    for (const j of active) {
      if (areNeighbours(i, j, sides.length)) continue;
      const at = meeting(side, sides[j]!);
      if (at !== undefined) return { kind: 'crosses itself', edges: i < j ? [i, j] : [j, i], at };
    }
    active.push(i);
  }
  return undefined;
}

const areNeighbours = (i: number, j: number, n: number) => (i + 1) % n === j || (j + 1) % n === i;

/** Where two edges meet or touch; of edges that lie on each other, one of the points that they share. */
function meeting([a, b]: Side, [c, d]: Side): Point | undefined {
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

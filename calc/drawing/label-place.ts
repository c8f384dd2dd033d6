import type { Contour } from '../outline/contour.ts';
import { flattened } from '../outline/flatten.ts';
import type { Point } from '../outline/shape.ts';
import { type Box, boxOf } from './bounds.ts';

/** Where a block of a size stands on a piece: its middle, and whether it is turned by a right angle. */
export interface BlockPlace {
  readonly middle: Point;
  readonly upright: boolean;
  /** height of its capitals, m */
  readonly height: number;
}

/** Heights of capitals that are tried, m: read at arm's length first, then what a pen just draws. */
const heights = [0.012, 0.01, 0.008, 0.006, 0.005, 0.004, 0.003, 0.0025];

/** Of the points that are looked at, those farthest from an edge are tried. */
const gridSteps = 12;
const tried = 16;

/** Edges that are curves are looked at as chords this near to them, m. */
const tolerance = 5e-4;

/** A block is kept so far from the edge, in heights of its capitals. */
const clear = 0.6;

type Edge = readonly [Point, Point];

/**
 * The place for a block of words inside a piece (its edge first, then its holes), as large as fits. `sizeOf` gives along
 * and across of the block for a height of capitals, m. Where none fits it stands below the piece.
 */
export function blockPlace(
  contours: readonly Contour[],
  sizeOf: (height: number) => { readonly along: number; readonly across: number },
): BlockPlace {
  const edges = contours.flatMap((contour) => edgesOf(flattened(contour, tolerance)));
  const box = boxOf(edges.map(([from]) => from));
  const candidates = deepPoints(edges, box);
  for (const height of heights) {
    const { along, across } = sizeOf(height);
    const [a, b] = [along / 2 + clear * height, across / 2 + clear * height];
    for (const upright of [false, true]) {
      const [x, y] = upright ? [b, a] : [a, b];
      const middle = candidates.find((at) => !edges.some((edge) => meets(edge, at, x, y)));
      if (middle !== undefined) return { middle, upright, height };
    }
  }
  const height = heights.at(-1) ?? 0.0025;
  const { along, across } = sizeOf(height);
  return { middle: { x: box.low.x + along / 2, y: box.low.y - across / 2 - 2 * height }, upright: false, height };
}

const edgesOf = (points: readonly Point[]): Edge[] =>
  points.map((from, i) => [from, points[(i + 1) % points.length] as Point]);

/** In the middle of a piece rather than where there is a little more room: m of room to a m of way. */
const pull = 0.1;

/** Points inside the edges, those in the middle of most room first. */
function deepPoints(edges: readonly Edge[], { low, high }: Box): Point[] {
  const found: { readonly at: Point; readonly deep: number }[] = [];
  const middle = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 };
  for (let i = 1; i < gridSteps; i++) {
    for (let j = 1; j < gridSteps; j++) {
      const at = {
        x: low.x + ((high.x - low.x) * i) / gridSteps,
        y: low.y + ((high.y - low.y) * j) / gridSteps,
      };
      const deep = depth(edges, at);
      if (deep > 0) found.push({ at, deep: deep - pull * Math.hypot(at.x - middle.x, at.y - middle.y) });
    }
  }
  return found
    .sort((a, b) => b.deep - a.deep)
    .slice(0, tried)
    .map(({ at }) => at);
}

/** How far a point lies inside, m; negative outside. */
function depth(edges: readonly Edge[], { x, y }: Point): number {
  let inside = false;
  let nearest = Infinity;
  for (const [a, b] of edges) {
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const along = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
    nearest = Math.min(nearest, (a.x + along * dx - x) ** 2 + (a.y + along * dy - y) ** 2);
  }
  return (inside ? 1 : -1) * Math.sqrt(nearest);
}

/** Whether an edge meets the upright box of half sides `a` and `b` round a point: clipped by Liang and Barsky (1984). */
export function meets([from, to]: Edge, at: Point, a: number, b: number): boolean {
  let [first, last] = [0, 1];
  for (const [start, way, half] of [
    [from.x - at.x, to.x - from.x, a],
    [from.y - at.y, to.y - from.y, b],
  ] as const) {
    if (way === 0) {
      if (Math.abs(start) > half) return false;
      continue;
    }
    const [one, other] = [(-half - start) / way, (half - start) / way];
    first = Math.max(first, Math.min(one, other));
    last = Math.min(last, Math.max(one, other));
    if (first > last) return false;
  }
  return true;
}

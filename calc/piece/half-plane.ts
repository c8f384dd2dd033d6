import { bulgeOf, onCircle, pointOf, type Segment, segmentsOf } from '../outline/arc.ts';
import type { Contour, Vertex } from '../outline/contour.ts';
import { contourArea } from '../outline/contour-measure.ts';
import { boxesOf } from '../outline/segment-lists.ts';
import type { Point } from '../outline/shape.ts';

/** The points p with normal . p >= from; `normal` has length 1, `from` in m. */
export interface HalfPlane {
  readonly normal: Point;
  readonly from: number;
}

/** Part of a segment that lies on one side. */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

/**
 * What of a counter-clockwise contour lies in a half plane, as true straights and arcs: none, one or several contours. The
 * line of the cut is walked with the inside on the left, from where the contour leaves the half plane to where it next
 * comes back.
 */
export function clipped(contour: Contour, half: HalfPlane): readonly Contour[] {
  const stretches = segmentsOf(contour).flatMap((s) => split(s, half));
  const inside = stretches.map((s) => isWithin(s, half));
  if (inside.every((is) => is)) return [contour];
  const chains = chainsOf(stretches, inside);
  return closed(chains, half)
    .map((loop) => loop.filter((v, i) => apart(v, loop[(i + 1) % loop.length]!)))
    .filter((loop) => loop.length > 1 && contourArea(loop) > 1e-12);
}

/** What of a contour lies in all half planes. */
export const clippedByAll = (contour: Contour, halves: readonly HalfPlane[]): readonly Contour[] =>
  halves.reduce<readonly Contour[]>((left, half) => left.flatMap((one) => clipped(one, half)), [contour]);

const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y) > 1e-12;

const middleOf = ({ from, to, bulge }: Stretch): Point => {
  // the sagitta of an arc is bulge times half its chord, to the right of the chord where it turns left
  const [mx, my] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
  return { x: mx + (bulge * (to.y - from.y)) / 2, y: my - (bulge * (to.x - from.x)) / 2 };
};

const depthOf = ({ normal, from }: HalfPlane, p: Point): number => normal.x * p.x + normal.y * p.y - from;

/** Whether a stretch that does not cross the line lies in the half plane. */
export const isWithin = (stretch: Stretch, half: HalfPlane): boolean => depthOf(half, middleOf(stretch)) > 0;

/** A segment cut where it crosses the line. */
export function split(s: Segment, half: HalfPlane): Stretch[] {
  const shares = crossings(s, half).filter((t) => t > 1e-12 && t < 1 - 1e-12);
  if (shares.length === 0) return [{ from: s.from, to: s.to, bulge: s.bulge }];
  const ends = [0, ...shares.sort((a, b) => a - b), 1];
  return ends.slice(1).map((to, i) => ({
    from: pointOf(s, ends[i]!),
    to: pointOf(s, to),
    bulge: s.arc === undefined ? 0 : bulgeOf(s.arc.sweep * (to - ends[i]!)),
  }));
}

function crossings(s: Segment, half: HalfPlane): number[] {
  const depth = (p: Point) => depthOf(half, p);
  if (s.arc === undefined) {
    const [a, b] = [depth(s.from), depth(s.to)];
    return a > 0 !== b > 0 ? [a / (a - b)] : [];
  }
  const { centre, radius, start, sweep } = s.arc;
  const cos = -depth(centre) / radius;
  if (Math.abs(cos) >= 1) return [];
  const [towards, off] = [Math.atan2(half.normal.y, half.normal.x), Math.acos(cos)];
  const turn = 2 * Math.PI;
  return [towards - off, towards + off].flatMap((angle) => {
    const ahead = sweep > 0 ? angle - start : start - angle;
    const once = ((ahead % turn) + turn) % turn;
    return once < Math.abs(sweep) && Math.abs(depth(onCircle(s.arc!, angle))) < 1e-9 ? [once / Math.abs(sweep)] : [];
  });
}

/**
 * Where the line `normal . p = from` lies inside a contour: pairs of places along it (m, to the left of the normal turned by a
 * quarter: along (normal.y, -normal.x)), in order. Touching is no crossing.
 */
export function chordsOn(contour: Contour, half: HalfPlane): readonly (readonly [number, number])[] {
  const stretches = nearLine(contour, half);
  const inside = stretches.map((s) => isWithin(s, half));
  const met = stretches
    .filter((_, i) => inside[i] !== inside[(i + inside.length - 1) % inside.length])
    .map(({ from }) => half.normal.y * from.x - half.normal.x * from.y)
    .sort((a, b) => a - b);
  return Array.from({ length: met.length >> 1 }, (_, i) => [met[2 * i]!, met[2 * i + 1]!] as const);
}

/** The segments cut at a line, but of a run that lies to one side of it its first alone. */
function nearLine(contour: Contour, half: HalfPlane): Stretch[] {
  const [segments, boxes] = [segmentsOf(contour), boxesOf(contour)];
  const { normal } = half;
  const stretches: Stretch[] = [];
  let side = 0;
  for (let i = 0; i < segments.length; i++) {
    const at = 4 * i;
    const [rx, ry] = [(boxes[at + 2]! - boxes[at]!) / 2, (boxes[at + 3]! - boxes[at + 1]!) / 2];
    const depth = normal.x * (boxes[at]! + rx) + normal.y * (boxes[at + 1]! + ry) - half.from;
    const reach = Math.abs(normal.x) * rx + Math.abs(normal.y) * ry;
    const now = Math.abs(depth) > reach * (1 + 1e-9) ? Math.sign(depth) : 0;
    if (now === 0 || now !== side) stretches.push(...split(segments[i]!, half));
    side = now;
  }
  return stretches;
}

/** The point of the line of a half plane at a place along it. */
export const onLine = ({ normal, from }: HalfPlane, along: number): Point => ({
  x: normal.x * from + normal.y * along,
  y: normal.y * from - normal.x * along,
});

/** The runs of stretches inside, each from where the contour comes in to where it goes out. */
function chainsOf(stretches: readonly Stretch[], inside: readonly boolean[]): Stretch[][] {
  const n = stretches.length;
  const first = inside.findIndex((is, i) => is && !inside[(i + n - 1) % n]);
  if (first < 0) return [];
  const chains: Stretch[][] = [];
  for (let k = 0; k < n; k++) {
    const i = (first + k) % n;
    if (!inside[i]) continue;
    if (!inside[(i + n - 1) % n]) chains.push([]);
    chains.at(-1)!.push(stretches[i]!);
  }
  return chains;
}

function closed(chains: readonly Stretch[][], { normal }: HalfPlane): Vertex[][] {
  const along = (p: Point) => normal.y * p.x - normal.x * p.y;
  const left = new Set(chains);
  const loops: Vertex[][] = [];
  for (const begin of chains) {
    if (!left.has(begin)) continue;
    const loop: Vertex[] = [];
    let chain: Stretch[] | undefined = begin;
    while (chain !== undefined) {
      left.delete(chain);
      for (const { from, bulge } of chain)
        loop.push(bulge === 0 ? { x: from.x, y: from.y } : { x: from.x, y: from.y, bulge });
      const out = chain.at(-1)!.to;
      loop.push({ x: out.x, y: out.y });
      chain = next(chains, along, along(out), begin, left);
    }
    loops.push(loop);
  }
  return loops;
}

/** The chain that comes in next along the line of the cut; none where that is the one that the loop began with. */
function next(
  chains: readonly Stretch[][],
  along: (p: Point) => number,
  from: number,
  begin: Stretch[],
  left: ReadonlySet<Stretch[]>,
): Stretch[] | undefined {
  let [best, nearest]: [Stretch[] | undefined, number] = [undefined, Infinity];
  for (const chain of chains) {
    if (chain !== begin && !left.has(chain)) continue;
    const way = along(chain[0]!.from) - from;
    if (way > -1e-12 && way < nearest) [best, nearest] = [chain, way];
  }
  return best === begin ? undefined : best;
}

import { keptWith } from '../kept.ts';
import { following, type Outcome } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { contourDistance } from '../outline/contour-distance.ts';
import { contourBox } from '../outline/contour-measure.ts';
import type { Point } from '../outline/shape.ts';
import { type Flat, offsetLines } from './footprint-contour.ts';
import { chordsOn, type HalfPlane, onLine } from './half-plane.ts';

/** More holes, or more cuts, than this are not drawn one by one. */
export const mostHoles = 20_000;
const mostCuts = 1000;

/** The line `y = at`, with x growing along it. */
const level = (at: number): HalfPlane => ({ normal: { x: 0, y: 1 }, from: at });
/** The line `x = at`. */
const upright = (at: number): HalfPlane => ({ normal: { x: 1, y: 0 }, from: at });

const multiples = (low: number, high: number, pitch: number): number[] => {
  const first = Math.ceil(low / pitch - 1e-9);
  return Array.from(
    { length: Math.max(0, Math.floor(high / pitch + 1e-9) - first + 1) },
    (_, i) => (first + i) * pitch,
  );
};

/**
 * The holes of a perforated core: on a square grid through the origin, their middles at least `margin` (m) from every edge of
 * it. None where they would be more than can be drawn.
 */
export function gridHoles({ outer, holes }: Flat, pitch: number, margin: number): Outcome<readonly Point[]> {
  const [low, high] = contourBox(outer);
  if (!(pitch > 0) || ((high.x - low.x) * (high.y - low.y)) / (pitch * pitch) > mostHoles) return [];
  const off = ({ x, y }: Point) =>
    holes.every((hole) => Math.abs(contourDistance(hole, { x, y })) >= margin && contourDistance(hole, { x, y }) > 0);
  return following(
    points(outer, `${pitch} ${margin}`, () => gridWithin(outer, pitch, margin)),
    (all) => all.filter(off),
  );
}

const points = keptWith<Contour, Outcome<readonly Point[]>>();

const gridWithin = (outer: Contour, pitch: number, margin: number): Outcome<readonly Point[]> =>
  following(offsetLines(outer, -margin), (inner) =>
    inner.flatMap((line) => {
      const [from, to] = contourBox(line);
      return multiples(from.y, to.y, pitch).flatMap((y) =>
        chordsOn(line, level(y)).flatMap(([start, end]) => multiples(start, end, pitch).map((x): Point => ({ x, y }))),
      );
    }),
  );

/** Saw cuts both ways on a grid through the origin, from edge to edge. */
export function gridCuts(outer: Contour, pitch: number): readonly Contour[] {
  const [low, high] = contourBox(outer);
  if (!(pitch > 0) || (high.x - low.x + high.y - low.y) / pitch > mostCuts) return [];
  return cuts(outer, String(pitch), () => {
    const lines = [...multiples(low.y, high.y, pitch).map(level), ...multiples(low.x, high.x, pitch).map(upright)];
    return lines.flatMap((line) => chordsOn(outer, line).map(([from, to]) => [onLine(line, from), onLine(line, to)]));
  });
}

const cuts = keptWith<Contour, readonly Contour[]>();

/** Lines by which a core is parted in sheets: places along x and along y, m. */
export interface Parting {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** So many equal lengths along x, or the fewest sheets that the core is made up of, whichever way they lie. */
export function partingOf(
  outer: Contour,
  pieces: number | undefined,
  sheet: { readonly length: number; readonly width: number } | undefined,
): Parting {
  const [low, high] = contourBox(outer);
  const [length, width] = [high.x - low.x, high.y - low.y];
  if (pieces !== undefined && pieces >= 1 && pieces <= 100)
    return { x: equal(low.x, length, Math.round(pieces)), y: [] };
  if (sheet === undefined || !(sheet.length > 0 && sheet.width > 0)) return { x: [], y: [] };
  const needed = (a: number, b: number) => ({ x: countOf(length, a), y: countOf(width, b) });
  const [along, across] = [needed(sheet.length, sheet.width), needed(sheet.width, sheet.length)];
  const best = across.x * across.y < along.x * along.y ? across : along;
  return best.x * best.y > 100 ? { x: [], y: [] } : { x: equal(low.x, length, best.x), y: equal(low.y, width, best.y) };
}

const countOf = (length: number, sheet: number) => Math.max(1, Math.ceil(length / sheet - 1e-9));
const equal = (low: number, length: number, count: number) =>
  Array.from({ length: count - 1 }, (_, i) => low + ((i + 1) * length) / count);

/** The cells that a parting makes, each as half planes. */
export function cells({ x, y }: Parting): readonly (readonly HalfPlane[])[] {
  const bands = (at: readonly number[], normal: Point) =>
    Array.from({ length: at.length + 1 }, (_, i): HalfPlane[] => [
      ...(i === 0 ? [] : [{ normal, from: at[i - 1]! }]),
      ...(i === at.length ? [] : [{ normal: { x: -normal.x, y: -normal.y }, from: -at[i]! }]),
    ]);
  return bands(x, { x: 1, y: 0 }).flatMap((column) => bands(y, { x: 0, y: 1 }).map((row) => [...column, ...row]));
}

/** The only place that knows the library for offsets and unions of polygons; it works on whole numbers. */
import {
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
  PathType,
} from 'clipper2-ts';
import type { Outcome } from '../outcome.ts';
import type { Contour } from './contour.ts';
import { contourArea } from './contour-measure.ts';
import { chordTolerance, flattened } from './flatten.ts';
import type { Point } from './shape.ts';

/** Steps of the grid in a metre, of 0.1 um: products of coordinates of a part stay exact in a double. */
const steps = 1e7;

/** Larger than any part; beyond it products of the library's coordinates would be rounded. */
const furthest = 10_000;
const beyond = { problem: 'the outline reaches further than 10 km, or to no place that can be told' };

/** What is left over from rounding is no piece, m2. */
const speck = 1e-9;

/** What the chords of arcs may be off where an exact line is asked for, m. */
const fine = chordTolerance / 4;

export type Clipping = 'union' | 'difference' | 'intersection';

const types: Readonly<Record<Clipping, ClipType>> = {
  union: ClipType.Union,
  difference: ClipType.Difference,
  intersection: ClipType.Intersection,
};

/**
 * The union of contours, what is left of them less others, or what they share with others. Arcs come back as chords that leave
 * them by no more than a quarter of 0.02 mm; outlines counter-clockwise, holes clockwise.
 */
export function clippedContours(
  clipping: Clipping,
  subjects: readonly Contour[],
  others: readonly Contour[] = [],
): Outcome<readonly Contour[]> {
  const [given, clips] = [pathsOf(subjects), pathsOf(others)];
  if ('problem' in given) return given;
  if ('problem' in clips) return clips;
  if (given.length === 0 && (clipping !== 'union' || clips.length === 0)) return [];
  const engine = new Clipper64();
  if (given.length > 0) engine.addPaths(given, PathType.Subject, false);
  if (clips.length > 0) engine.addPaths(clips, PathType.Clip, false);
  const solution: Paths64 = [];
  engine.execute(types[clipping], FillRule.NonZero, solution);
  return contoursOf(solution);
}

/**
 * The line that runs `by` (m) outside a contour, inside where `by` is negative, of the flattened contour, in
 * pieces and holes. Outwards with round corners.
 */
export function clippedOffset(contours: readonly Contour[], by: number): Outcome<readonly Contour[]> {
  // a round corner further out than that has no end of chords; further in nothing is left of what can be told
  if (by < -furthest) return [];
  if (by > furthest) return beyond;
  const paths = pathsOf(contours);
  if ('problem' in paths) return paths;
  if (paths.length === 0) return [];
  const engine = new ClipperOffset(2, fine * steps);
  engine.addPaths(paths, JoinType.Round, EndType.Polygon);
  const solution: Paths64 = [];
  engine.execute(by * steps, solution);
  return contoursOf(solution);
}

/** Whole coordinates; the library throws at empty paths and says nothing at numbers that are none. */
function pathsOf(contours: readonly Contour[]): Paths64 | { readonly problem: string } {
  const paths: Paths64 = [];
  for (const contour of contours) {
    const path: Path64 = flattened(contour, fine).map(({ x, y }) => ({
      x: Math.round(x * steps),
      y: Math.round(y * steps),
    }));
    if (path.some((p) => !(Math.abs(p.x) <= furthest * steps && Math.abs(p.y) <= furthest * steps))) return beyond;
    if (path.length >= 3) paths.push(path);
  }
  return paths;
}

function contoursOf(paths: Paths64): Contour[] {
  return paths
    .map((path): Contour => path.map((p): Point => ({ x: p.x / steps, y: p.y / steps })))
    .filter((contour) => contour.length >= 3 && Math.abs(contourArea(contour)) > speck);
}

/** Whether a contour from this file is a hole. */
export const isHole = (contour: Contour): boolean => contourArea(contour) < 0;

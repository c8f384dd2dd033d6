import { finite, given, type Outcome } from '../outcome.ts';
import { type Arc, bulgeOf, lengthOf, pointOf, type Segment, segment, segmentsOf, wrapped } from './arc.ts';
import { clippedOffset } from './clip.ts';
import type { Contour, Vertex } from './contour.ts';
import { contourDistance } from './contour-distance.ts';
import { contourFault } from './contour-fault.ts';
import { contourArea, contourBox, isConvexContour, nearShare, tidiedContour } from './contour-measure.ts';
import { meetings } from './meeting.ts';
import { turnsOf } from './segment-lists.ts';
import type { Point } from './shape.ts';

/**
 * The line that runs `by` (m) outside a counter-clockwise contour, inside where `by` is negative. Straights and arcs
 * become straights and arcs, with arcs round corners that open and the crossing of both sides at corners that close; where more
 * must be trimmed than that, the line is found on the flattened contour. Inwards it may come in several pieces or in
 * none; outwards a bay that closes leaves a hole (clockwise).
 */
export function offsetContour(contour: Contour, by: number): Outcome<readonly Contour[]> {
  return given([finite('the offset', by)], () => {
    if (by === 0) return [contour];
    const exact = arcTrue(contour, by);
    return exact === undefined ? clippedOffset([contour], by) : [exact];
  });
}

/** A gap between two sides that is none, m: drawings are rounded. */
const smooth = 1e-7;

/** m2 inside all pieces, less their holes. */
export function areaOf(contours: readonly Contour[]): number {
  return contours.reduce((sum, contour) => sum + contourArea(contour), 0);
}

/** The offset line without more trimming than at corners; undefined where that is not all. */
function arcTrue(contour: Contour, by: number): Contour | undefined {
  const old = segmentsOf(contour);
  const n = old.length;
  if (n < 2) return undefined;
  const sides: Segment[] = [];
  for (const s of old) {
    const side = shift(s, by);
    if (side === undefined) return undefined;
    sides.push(side);
  }
  const turns = turnsOf(contour);
  const [low, high] = contourBox(contour);
  const near = (Math.hypot(high.x - low.x, high.y - low.y) + Math.abs(by)) * nearShare;
  // What lies between side i - 1 and side i: a common point, or an arc about the old corner.
  const [ends, begins]: [Point[], Point[]] = [[], []];
  const rounds = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const last = i > 0 ? i - 1 : n - 1;
    const [before, side] = [sides[last]!, sides[i]!];
    const turn = turns[last]!;
    const gap = turn * by;
    if (gap > smooth) {
      ends.push(before.to);
      begins.push(side.from);
      rounds[i] = turn;
    } else {
      const at = gap < -smooth ? crossing(before, side, old[i]!.from, near) : side.from;
      if (at === undefined) return undefined;
      ends.push(at);
      begins.push(at);
    }
  }
  const line: Vertex[] = [];
  for (let i = 0; i < n; i++) {
    const kept = between(sides[i]!, begins[i]!, ends[i + 1 < n ? i + 1 : 0]!);
    if (kept === undefined) return undefined;
    if (rounds[i] !== 0) line.push({ x: ends[i]!.x, y: ends[i]!.y, bulge: bulgeOf(rounds[i]!) });
    line.push(kept);
  }
  const found = tidiedContour(line);
  return isTrue(found, line, contour, by) ? found : undefined;
}

/** A segment `by` to its right, m; none where an arc would turn inside out. */
function shift(s: Segment, by: number): Segment | undefined {
  if (s.arc === undefined) {
    const [dx, dy] = [s.to.x - s.from.x, s.to.y - s.from.y];
    const share = by / lengthOf(dx, dy);
    const move = (p: Point) => ({ x: p.x + dy * share, y: p.y - dx * share });
    return Number.isFinite(share) ? segment(move(s.from), move(s.to)) : undefined;
  }
  const { centre, radius, sweep } = s.arc;
  const wider = radius + Math.sign(sweep) * by;
  if (wider <= radius * 1e-9) return undefined;
  const move = (p: Point) => ({
    x: centre.x + ((p.x - centre.x) * wider) / radius,
    y: centre.y + ((p.y - centre.y) * wider) / radius,
  });
  return {
    from: move(s.from),
    to: move(s.to),
    bulge: s.bulge,
    arc: { centre, radius: wider, start: s.arc.start, sweep },
  };
}

/** Where two sides that overlap at a corner cut each other off: the crossing that is nearest to the old corner. */
function crossing(before: Segment, side: Segment, corner: Point, near: number): Point | undefined {
  const off = (p: Point) => Math.hypot(p.x - corner.x, p.y - corner.y);
  const found = meetings(before, side, near);
  return found.length > 1 ? found.sort((p, q) => off(p) - off(q))[0] : found[0];
}

/** What is left of a side from one point on it to another; none where the second comes first. */
function between(side: Segment, begin: Point, end: Point): Vertex | undefined {
  if (side.arc === undefined) {
    const ahead = (end.x - begin.x) * (side.to.x - side.from.x) + (end.y - begin.y) * (side.to.y - side.from.y);
    return ahead > 0 ? { x: begin.x, y: begin.y } : undefined;
  }
  const sweep = progress(side.arc, end) - progress(side.arc, begin);
  return sweep * side.arc.sweep > 0 ? { x: begin.x, y: begin.y, bulge: bulgeOf(sweep) } : undefined;
}

/** How far along its sweep (rad, with its sign) an arc has come at a point on it. */
function progress(arc: Arc, p: Point): number {
  const angle = Math.atan2(p.y - arc.centre.y, p.x - arc.centre.x);
  return arc.sweep / 2 + wrapped(angle - arc.start - arc.sweep / 2);
}

const mostLooks = 256;

/** Whether a line found side by side is the offset line: fit, the right way round, and everywhere as far off as asked. */
function isTrue(found: Contour, line: Contour, contour: Contour, by: number): boolean {
  if (contourArea(line) <= 0) return false;
  // outside a convex line no two sides come near each other, and nothing can be wrong (Steiner's parallel body)
  if (by > 0 && contour.length <= mostLooks && isConvexContour(contour) && turnsOnce(contour)) return true;
  if (contourFault(found) !== undefined) return false;
  const segments = segmentsOf(found);
  // what crosses itself nowhere is off its line nowhere or everywhere: a long line is looked at here and there
  const step = Math.max(1, Math.floor(segments.length / mostLooks));
  return segments.every(
    (s, i) => i % step !== 0 || Math.abs(contourDistance(contour, pointOf(s, 0.5)) - by) <= 1e-7 + 1e-7 * Math.abs(by),
  );
}

/** Whether a line that bends nowhere inwards goes round once: a star goes round twice. */
function turnsOnce(contour: Contour): boolean {
  const corners = turnsOf(contour).reduce((sum, turn) => sum + turn, 0);
  const turn = segmentsOf(contour).reduce((sum, { arc }) => sum + (arc?.sweep ?? 0), corners);
  return Math.abs(turn - 2 * Math.PI) < 1e-6;
}

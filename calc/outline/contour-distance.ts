import type { Arc, Segment } from './arc.ts';
import type { Contour } from './contour.ts';
import { perLeaf, treeOf } from './segment-tree.ts';
import type { Point } from './shape.ts';

/** What tells whether a direction from the centre meets an arc: its middle and the cosine of its half sweep. */
interface ArcSide {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly mx: number;
  readonly my: number;
  readonly least: number;
}

type ArcSides = (ArcSide | undefined)[];
const sides = new WeakMap<Contour, ArcSides>();

/** The sides of the arcs of a contour, each told when it is first looked at: of a long line most never are. */
function arcsOf(contour: Contour): ArcSides {
  let found = sides.get(contour);
  if (found === undefined) {
    found = new Array<ArcSide | undefined>(contour.length).fill(undefined);
    sides.set(contour, found);
  }
  return found;
}

function sideOf(arcs: ArcSides, i: number, arc: Arc): ArcSide {
  let side = arcs[i];
  if (side === undefined) {
    const { centre, radius, start, sweep } = arc;
    const middle = start + sweep / 2;
    const [mx, my] = [Math.cos(middle), Math.sin(middle)];
    side = { x: centre.x, y: centre.y, radius, mx, my, least: Math.cos(sweep / 2) };
    arcs[i] = side;
  }
  return side;
}

/** Distance of a point to a contour, m: negative inside, which is told by even and odd. Exact for straights and arcs. */
export function contourDistance(contour: Contour, p: Point): number {
  const { distance } = nearestOnContour(contour, p);
  return insideContour(contour, p) ? -distance : distance;
}

export interface Nearest {
  /** m, without sign */
  readonly distance: number;
  /** which segment of the contour */
  readonly segment: number;
}

/** The segment that is nearest to a point; `except` says which segments are not looked at. */
export function nearestOnContour(contour: Contour, p: Point, except?: (segment: number) => boolean): Nearest {
  const { boxes, leaves, segments } = treeOf(contour);
  const arcs = arcsOf(contour);
  let least = Infinity;
  let segment = -1;
  const visit = (node: number) => {
    if (node >= leaves - 1) {
      const start = (node - leaves + 1) * perLeaf;
      for (let i = start; i < Math.min(segments.length, start + perLeaf); i++) {
        if (except?.(i)) continue;
        const d = squaredTo(segments[i]!, arcs, i, p);
        if (d < least) [least, segment] = [d, i];
      }
      return;
    }
    const [a, b] = [2 * node + 1, 2 * node + 2];
    const da = squaredToBox(boxes, a, p);
    const db = squaredToBox(boxes, b, p);
    const [near, far] = da <= db ? [a, b] : [b, a];
    if (Math.min(da, db) < least) visit(near);
    if (Math.max(da, db) < least) visit(far);
  };
  visit(0);
  return { distance: Math.sqrt(least), segment };
}

function squaredToBox(boxes: Float64Array, node: number, { x, y }: Point): number {
  const at = 4 * node;
  const dx = Math.max(boxes[at]! - x, 0, x - boxes[at + 2]!);
  const dy = Math.max(boxes[at + 1]! - y, 0, y - boxes[at + 3]!);
  return dx * dx + dy * dy;
}

function squaredTo(segment: Segment, arcs: ArcSides, i: number, { x, y }: Point): number {
  const { from, to } = segment;
  const arc = segment.arc === undefined ? undefined : sideOf(arcs, i, segment.arc);
  if (arc === undefined) {
    const ex = to.x - from.x;
    const ey = to.y - from.y;
    const along = ((x - from.x) * ex + (y - from.y) * ey) / (ex * ex + ey * ey);
    const t = along > 0 ? Math.min(1, along) : 0;
    return (from.x + t * ex - x) ** 2 + (from.y + t * ey - y) ** 2;
  }
  const dx = x - arc.x;
  const dy = y - arc.y;
  const off = Math.hypot(dx, dy);
  if (dx * arc.mx + dy * arc.my >= off * arc.least) return (off - arc.radius) ** 2;
  return Math.min((from.x - x) ** 2 + (from.y - y) ** 2, (to.x - x) ** 2 + (to.y - y) ** 2);
}

/**
 * Whether a point lies inside a contour: inside the polygon of its chords, or else inside one of the slices between a
 * chord and its arc.
 */
function insideContour(contour: Contour, p: Point): boolean {
  const { boxes, leaves, segments } = treeOf(contour);
  const arcs = arcsOf(contour);
  const count = segments.length;
  let inside = false;
  const visit = (node: number, first: number, span: number) => {
    if (first >= count) return;
    const at = 4 * node;
    if (p.x > boxes[at + 2]! || p.y > boxes[at + 3]! || p.y < boxes[at + 1]!) return;
    if (p.x < boxes[at]!) {
      // All of the run lies on the way of the ray: only its two ends matter.
      const last = segments[Math.min(count, first + span) - 1]!;
      if (segments[first]!.from.y > p.y !== last.to.y > p.y) inside = !inside;
      return;
    }
    if (node < leaves - 1) {
      visit(2 * node + 1, first, span / 2);
      visit(2 * node + 2, first + span / 2, span / 2);
      return;
    }
    for (let i = first; i < Math.min(count, first + span); i++)
      if (togglesAt(segments[i]!, arcs, i, p)) inside = !inside;
  };
  visit(0, 0, leaves * perLeaf);
  return inside;
}

function togglesAt(segment: Segment, arcs: ArcSides, i: number, p: Point): boolean {
  const { from, to, bulge } = segment;
  const arc = segment.arc === undefined ? undefined : sideOf(arcs, i, segment.arc);
  const ex = to.x - from.x;
  const ey = to.y - from.y;
  const cross = ex * (p.y - from.y) - ey * (p.x - from.x);
  let toggles = from.y > p.y !== to.y > p.y && (ey > 0 ? cross > 0 : cross < 0);
  if (arc !== undefined && Math.hypot(p.x - arc.x, p.y - arc.y) < arc.radius) {
    // On the chord itself a point belongs to the side that the ray counts it to: to the right of it, or above.
    const left = ey > 0 || (ey === 0 && ex < 0) ? cross > 0 : cross >= 0;
    if (left === bulge < 0) toggles = !toggles;
  }
  return toggles;
}

import { type Text, text } from '../figure/figure.ts';
import { type Segment, segmentBox, segmentsOf } from './arc.ts';
import type { Contour } from './contour.ts';
import { contourArea, contourBox, nearShare, turnBetween } from './contour-measure.ts';
import { meetings } from './meeting.ts';
import { eachMeeting, treeOf } from './segment-tree.ts';
import type { Point } from './shape.ts';

/** Why a closed line of straights and arcs is no outline, with the place. Segment numbers count from 0. */
export type ContourFault =
  | { readonly kind: 'too few points'; readonly points: number }
  | { readonly kind: 'too many points'; readonly points: number }
  | { readonly kind: 'no number'; readonly point: number }
  | { readonly kind: 'doubles back'; readonly segments: readonly [number, number]; readonly at: Point }
  | { readonly kind: 'crosses itself'; readonly segments: readonly [number, number]; readonly at: Point }
  | { readonly kind: 'no area' };

/** More straights and arcs than the outline of any part needs; they would be slow to work with. */
const mostSegments = 10_000;

/** What two neighbours may cross each other by where they should be tangent, m: drawings are rounded. */
const grazing = 1e-6;

/** A turn that is none, rad. */
const tangent = 1e-6;

/** The first fault of a tidied contour; undefined where it is a fit outline. */
export function contourFault(contour: Contour): ContourFault | undefined {
  const strange = contour.findIndex((v) => !Number.isFinite(v.x + v.y + (v.bulge ?? 0)));
  if (strange >= 0) return { kind: 'no number', point: strange };
  if (contour.length > mostSegments) return { kind: 'too many points', points: contour.length };
  const segments = segmentsOf(contour);
  const arcs = segments.some((s) => s.arc !== undefined);
  if (segments.length < (arcs ? 2 : 3)) return { kind: 'too few points', points: segments.length };
  const [low, high] = contourBox(contour);
  const size = Math.hypot(high.x - low.x, high.y - low.y);
  const near = size * nearShare;
  const turns = segments.map((s, i) => turnBetween(s, segments[(i + 1) % segments.length]!));
  const back = turns.findIndex((turn) => Math.abs(turn) > Math.PI - 1e-9);
  if (back >= 0)
    return { kind: 'doubles back', segments: [back, (back + 1) % segments.length], at: segments[back]!.to };
  return (
    firstCrossing(contour, near, turns) ??
    (Math.abs(contourArea(contour)) <= size * near ? { kind: 'no area' } : undefined)
  );
}

function firstCrossing(contour: Contour, near: number, turns: readonly number[]): ContourFault | undefined {
  const segments = segmentsOf(contour);
  const n = segments.length;
  const tree = treeOf(contour);
  for (const [i, s] of segments.entries()) {
    let fault: ContourFault | undefined;
    eachMeeting(tree, segmentBox(s), (j) => {
      if (j <= i) return false;
      const other = segments[j]!;
      // a straight and an arc, or two arcs, that are tangent where they join meet nowhere else
      if (j === i + 1 && n > 2 && Math.abs(turns[i]!) < tangent && Math.abs(s.bulge) < 1 && Math.abs(other.bulge) < 1)
        return false;
      const shared = [...(j === i + 1 ? [s.to] : []), ...((j + 1) % n === i ? [s.from] : [])];
      if (shared.length > 0 && s.arc === undefined && other.arc === undefined) return false;
      // A corner is met only at its own point.
      const close = shared.length === 0 ? 0 : 10 * near + graze(s, other);
      const at = meetings(s, other, shared.length === 0 ? near / 1000 : near).find((p) =>
        shared.every((q) => Math.hypot(p.x - q.x, p.y - q.y) > close),
      );
      if (at !== undefined) fault = { kind: 'crosses itself', segments: [i, j], at };
      return at !== undefined;
    });
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** How far from their common point two neighbours may still touch, if they run as good as tangent there. */
function graze(a: Segment, b: Segment): number {
  const radius = Math.min(a.arc?.radius ?? Infinity, b.arc?.radius ?? Infinity);
  return Math.sqrt(8 * radius * grazing);
}

/** The fault in words; where it is, is said beside. */
export function contourFaultWords(fault: ContourFault): Text {
  switch (fault.kind) {
    case 'too few points':
      return text('an outline needs at least 3 points, this one has {points}', { points: fault.points });
    case 'too many points':
      return text('the outline has {points} straights and arcs, more than the {most} that are worked with', {
        points: fault.points,
        most: mostSegments,
      });
    case 'no number':
      return text('point {number} of the outline has no place that can be told', { number: fault.point + 1 });
    case 'doubles back':
      return text('the outline doubles back on itself');
    case 'crosses itself':
      return text('the outline crosses itself');
    case 'no area':
      return text('the outline encloses no area');
  }
}

import { type Text, text } from '../figure/figure.ts';
import { segmentsOf } from './arc.ts';
import type { Contour } from './contour.ts';
import { contourArea, contourBox, nearShare } from './contour-measure.ts';
import { turnsOf } from './segment-lists.ts';
import { firstCrossing } from './self-crossing.ts';
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
  const back = turnsOf(contour).findIndex((turn) => Math.abs(turn) > Math.PI - 1e-9);
  if (back >= 0)
    return { kind: 'doubles back', segments: [back, (back + 1) % segments.length], at: segments[back]!.to };
  const crossing = firstCrossing(contour, near);
  if (crossing !== undefined) return { kind: 'crosses itself', ...crossing };
  return Math.abs(contourArea(contour)) <= size * near ? { kind: 'no area' } : undefined;
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

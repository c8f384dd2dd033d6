import { onceFor } from '../kept.ts';
import { onCircle, type Segment, segmentLength, segmentsOf } from '../outline/arc.ts';
import type { Contour } from '../outline/contour.ts';
import { headingsOf, turnsOf } from '../outline/segment-lists.ts';
import type { Point } from '../outline/shape.ts';

/** A stretch of an outline walked counter-clockwise: a straight, an arc, or the turn at one corner, which has no length. */
export interface EdgeStretch {
  /** rad, positive where the outline bulges outwards */
  readonly turn: number;
  /** m */
  readonly length: number;
  /** of the line where the stretch begins, rad from x */
  readonly heading: number;
  readonly segment: Segment;
  readonly kind: 'straight' | 'arc' | 'corner';
}

/** The stretches of a contour in order, each segment followed by the corner at its end where there is one. */
export const edgeTurns = onceFor((contour: Contour): readonly EdgeStretch[] => {
  const [headings, turns] = [headingsOf(contour), turnsOf(contour)];
  const list: EdgeStretch[] = [];
  segmentsOf(contour).forEach((segment, i) => {
    const { arc } = segment;
    const length = segmentLength(segment);
    const kind = arc === undefined ? 'straight' : 'arc';
    list.push({ kind, turn: arc?.sweep ?? 0, length, heading: headings[2 * i]!, segment });
    const turn = turns[i]!;
    if (Math.abs(turn) < 1e-9) return;
    list.push({ kind: 'corner', turn, length: 0, heading: headings[2 * i + 1]!, segment });
  });
  return list;
});

/** A point of an outline and the direction that leads straight out of it there, rad from x. */
export interface Foot {
  readonly at: Point;
  readonly outward: number;
}

/** The foot at a share of the turn of a stretch that has one. */
export function footAt({ kind, heading, turn, segment }: EdgeStretch, share: number): Foot {
  const outward = heading + share * turn - Math.PI / 2;
  const { arc } = segment;
  if (kind === 'corner' || arc === undefined) return { at: segment.to, outward };
  return { at: onCircle(arc, arc.start + share * arc.sweep), outward };
}

/**
 * The foot where a bend has turned by `share` of all its turn. The stretches `first` to `last` belong to the bend, the end of
 * the list followed by its beginning; where it wavers, the first place counts that comes to that turn.
 */
export function footInBend(
  stretches: readonly EdgeStretch[],
  { first, last, turn }: { readonly first: number; readonly last: number; readonly turn: number },
  share: number,
): Foot | undefined {
  const wanted = share * turn;
  const way = Math.sign(turn);
  const n = stretches.length;
  let sum = 0;
  let latest: EdgeStretch | undefined;
  for (let k = 0; k <= (last - first + n) % n; k++) {
    const stretch = stretches[(first + k) % n]!;
    if (stretch.turn === 0) continue;
    if (Math.sign(stretch.turn) === way && (sum + stretch.turn - wanted) * way >= 0)
      return footAt(stretch, Math.min(1, Math.max(0, (wanted - sum) / stretch.turn)));
    sum += stretch.turn;
    latest = stretch;
  }
  return latest === undefined ? undefined : footAt(latest, 1);
}

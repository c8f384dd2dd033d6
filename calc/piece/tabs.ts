import { type Segment, segmentLength, segmentsOf } from '../outline/arc.ts';
import type { Contour, Vertex } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import type { Dart } from './flat-piece.ts';

/** Cloth left longer at the low or the high end of x, by `length` (m). */
export interface Tab {
  readonly end: 'low' | 'high';
  readonly length: number;
}

/** How upright an edge must be to be the straight of an end, m. */
const upright = 1e-6;

/** Cloth between a tab and a dart beside it, and the narrowest tab that holds a hand's pull, m. From memory. */
const beside = 0.005;
const narrowest = 0.01;

/**
 * A contour with tabs: each straight that lies at the very end of it moves out by the length of the tab, with square corners, as
 * far as no dart is cut in it. An end without a straight has none.
 */
export function withTabs(contour: Contour, tabs: readonly Tab[], darts: readonly Dart[]): Contour {
  if (tabs.length === 0) return contour;
  const [low, high] = contourBox(contour);
  const longer = (end: 'low' | 'high') => tabs.reduce((sum, tab) => sum + (tab.end === end ? tab.length : 0), 0);
  const ends = [
    { x: low.x, by: -longer('low') },
    { x: high.x, by: longer('high') },
  ];
  return segmentsOf(contour)
    .flatMap((s, i): Vertex[] => {
      const end = ends.find(
        ({ x, by }) => by !== 0 && Math.abs(s.from.x - x) < upright && Math.abs(s.to.x - x) < upright,
      );
      const free = end === undefined || s.arc !== undefined ? undefined : freeStretch(s, darts);
      if (end === undefined || free === undefined) return [contour[i]!];
      const [from, to] = free.map((share) => ({
        x: s.from.x + share * (s.to.x - s.from.x),
        y: s.from.y + share * (s.to.y - s.from.y),
      })) as [Vertex, Vertex];
      const line = [from, { x: from.x + end.by, y: from.y }, { x: to.x + end.by, y: to.y }];
      return free[0] > 0 ? [contour[i]!, ...line, to] : [...line, to];
    })
    .filter((v, i, line) => {
      const next = line[(i + 1) % line.length]!;
      return Math.hypot(next.x - v.x, next.y - v.y) > 1e-12;
    });
}

/** The longest stretch of a straight without darts, as shares of its length. */
function freeStretch(s: Segment, darts: readonly Dart[]): readonly [number, number] | undefined {
  const length = segmentLength(s);
  const [ux, uy] = [(s.to.x - s.from.x) / length, (s.to.y - s.from.y) / length];
  const cuts = darts
    .map(({ mouth, width }) => {
      const [dx, dy] = [mouth.x - s.from.x, mouth.y - s.from.y];
      return { along: dx * ux + dy * uy, off: Math.abs(dx * uy - dy * ux), half: width / 2 + beside };
    })
    .filter(({ along, off, half }) => off < half && along > -half && along < length + half)
    .sort((a, b) => a.along - b.along);
  let [best, from]: [readonly [number, number], number] = [[0, 0], 0];
  for (const { along, half } of [...cuts, { along: length, half: 0 }]) {
    const to = Math.min(length, along - half);
    if (to - from > best[1] - best[0]) best = [from, to];
    from = Math.max(from, along + half);
  }
  return best[1] - best[0] < narrowest ? undefined : [best[0] / length, best[1] / length];
}

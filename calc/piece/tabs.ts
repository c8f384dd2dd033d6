import { segmentsOf } from '../outline/arc.ts';
import type { Contour, Vertex } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import type { Point } from '../outline/shape.ts';

/** Cloth left longer at the low or the high end of x, by `length` (m). */
export interface Tab {
  readonly end: 'low' | 'high';
  readonly length: number;
}

/** How upright an edge must be to be the straight of an end, m. */
const upright = 1e-6;

/**
 * A contour with tabs: each straight that lies at the very end of it moves out by the length of the tab, with square corners. An
 * end without a straight has none. `spans` are where they stand on the contour, from base to base.
 */
export function withTabs(
  contour: Contour,
  tabs: readonly Tab[],
): { readonly contour: Contour; readonly spans: readonly { readonly from: Point; readonly to: Point }[] } {
  if (tabs.length === 0) return { contour, spans: [] };
  const [low, high] = contourBox(contour);
  const longer = (end: 'low' | 'high') => tabs.reduce((sum, tab) => sum + (tab.end === end ? tab.length : 0), 0);
  const ends = [
    { x: low.x, by: -longer('low') },
    { x: high.x, by: longer('high') },
  ];
  const spans: { from: Point; to: Point }[] = [];
  const line = segmentsOf(contour).flatMap((s, i): Vertex[] => {
    const end = ends.find(
      ({ x, by }) => by !== 0 && Math.abs(s.from.x - x) < upright && Math.abs(s.to.x - x) < upright,
    );
    if (end === undefined || s.arc !== undefined) return [contour[i]!];
    spans.push({ from: s.from, to: s.to });
    return [
      { x: s.from.x, y: s.from.y },
      { x: s.from.x + end.by, y: s.from.y },
      { x: s.to.x + end.by, y: s.to.y },
    ].concat({ x: s.to.x, y: s.to.y });
  });
  return spans.length === 0 ? { contour, spans } : { contour: withoutDoubles(line), spans };
}

const withoutDoubles = (line: readonly Vertex[]): Contour =>
  line.filter((v, i) => {
    const next = line[(i + 1) % line.length]!;
    return Math.hypot(next.x - v.x, next.y - v.y) > 1e-12;
  });

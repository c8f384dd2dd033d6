import { segment } from '../outline/arc.ts';
import type { Contour, Vertex } from '../outline/contour.ts';
import { type HalfPlane, isWithin, split } from './half-plane.ts';

/** A line that is drawn on a piece; the last vertex of an open one has no way on. */
export interface Line {
  readonly line: Contour;
  readonly closed: boolean;
}

/** The parts of a line that lie in a half plane: open where it was cut. */
export function lineWithin({ line, closed }: Line, half: HalfPlane): readonly Line[] {
  const count = closed ? line.length : line.length - 1;
  const stretches = Array.from({ length: count }, (_, i) => segment(line[i]!, line[(i + 1) % line.length]!)).flatMap(
    (s) => split(s, half),
  );
  const inside = stretches.map((s) => isWithin(s, half));
  if (inside.every((is) => is)) return [{ line, closed }];
  const n = stretches.length;
  const begin = closed ? inside.findIndex((is, i) => is && !inside[(i + n - 1) % n]) : 0;
  const parts: Vertex[][] = [];
  for (let k = 0; begin >= 0 && k < n; k++) {
    const i = (begin + k) % n;
    const { from, to, bulge } = stretches[i]!;
    if (!inside[i]) continue;
    const before = k > 0 && inside[(i + n - 1) % n];
    if (before) parts.at(-1)!.pop();
    else parts.push([]);
    parts.at(-1)!.push(bulge === 0 ? { x: from.x, y: from.y } : { x: from.x, y: from.y, bulge }, { x: to.x, y: to.y });
  }
  return parts.map((part) => ({ line: part, closed: false }));
}

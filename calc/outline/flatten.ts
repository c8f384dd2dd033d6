import { onCircle, segmentsOf } from './arc.ts';
import type { Contour } from './contour.ts';
import type { Point } from './shape.ts';

/** What a chord may be off its arc, m: less than any cutter follows. */
export const chordTolerance = 0.02e-3;

/** The most chords that one arc is told by. */
const mostChords = 4096;

/** A contour as a polygon whose corners lie on it; its arcs leave their chords by no more than `chord` (m). */
export function flattened(contour: Contour, chord = chordTolerance): Point[] {
  return segmentsOf(contour).flatMap(({ from, arc }): Point[] => {
    if (arc === undefined) return [{ x: from.x, y: from.y }];
    const n = chordsOf(arc.radius, arc.sweep, chord);
    return Array.from({ length: n }, (_, i) =>
      i === 0 ? { x: from.x, y: from.y } : onCircle(arc, arc.start + (i / n) * arc.sweep),
    );
  });
}

/** How many chords an arc needs: half the angle of one has the cosine 1 - chord / radius. */
function chordsOf(radius: number, sweep: number, chord: number): number {
  const step = 2 * Math.acos(Math.max(0, 1 - chord / radius));
  return Math.min(mostChords, Math.max(1, Math.ceil(Math.abs(sweep) / step - 1e-9)));
}

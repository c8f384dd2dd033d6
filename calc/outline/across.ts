import { finite, following, given, type Outcome } from '../outcome.ts';
import { type PlainForm, plainForm } from './plain.ts';
import { edges } from './polygon.ts';
import type { Shape } from './shape.ts';

/** A stretch of part from `low` to `high`, m along y. */
export interface Chord {
  readonly low: number;
  readonly high: number;
}

/**
 * Where the line across a part at the station `x` (m) lies inside its outline, from low to high; none beyond its ends.
 */
export function chordsAcross(shape: Shape, x: number): Outcome<readonly Chord[]> {
  return given([finite('the station', x)], () => following(plainForm(shape), (form) => chords(form, x)));
}

/** Half the width of the narrowest piece of part at a station, m; 0 beyond its ends. */
export function halfWidthAcross(shape: Shape, x: number): Outcome {
  return following(chordsAcross(shape, x), (found) =>
    found.length === 0 ? 0 : Math.min(...found.map((c) => (c.high - c.low) / 2)),
  );
}

function chords(form: PlainForm, x: number): Chord[] {
  switch (form.kind) {
    case 'box': {
      const beyond = Math.abs(x) - form.length / 2;
      if (beyond > 0) return [];
      const round = Math.max(0, beyond + form.corner);
      return even(form.width / 2 - form.corner + Math.sqrt(form.corner ** 2 - round ** 2));
    }
    case 'ellipse':
      return Math.abs(x) > form.a ? [] : even(form.b * Math.sqrt(1 - (x / form.a) ** 2));
    case 'polygon': {
      const met = edges(form.points)
        .filter(([a, b]) => a.x > x !== b.x > x)
        .map(([a, b]) => a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y))
        .sort((p, q) => p - q);
      return Array.from({ length: met.length / 2 }, (_, i) => ({ low: met[2 * i]!, high: met[2 * i + 1]! }));
    }
  }
}

const even = (half: number): Chord[] => [{ low: -half, high: half }];

import { finite, following, given, type Outcome } from '../outcome.ts';
import { type Segment, segmentsOf, sweepsOver } from './arc.ts';
import { type PlainForm, plainForm } from './plain.ts';
import type { Point, Shape } from './shape.ts';

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
    case 'contour': {
      const met = segmentsOf(form.vertices)
        .flatMap((s) => heights(s, x))
        .sort((p, q) => p - q);
      return Array.from({ length: met.length / 2 }, (_, i) => ({ low: met[2 * i]!, high: met[2 * i + 1]! }));
    }
  }
}

const even = (half: number): Chord[] => [{ low: -half, high: half }];

/** Where a segment crosses the line at `x`: an arc is taken in parts that run one way along x. */
function heights({ from, to, arc }: Segment, x: number): number[] {
  if (arc === undefined)
    return from.x > x !== to.x > x ? [from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y)] : [];
  const { centre, radius, start, sweep } = arc;
  const turning = [0, Math.PI]
    .filter((angle) => sweepsOver(arc, angle))
    .map((angle) => ({ angle, after: (((angle - start) * Math.sign(sweep)) % (2 * Math.PI)) + 2 * Math.PI }))
    .map(({ angle, after }) => ({ angle, after: after % (2 * Math.PI) }))
    .sort((a, b) => a.after - b.after)
    .map(({ angle }): Point => ({ x: centre.x + radius * Math.cos(angle), y: centre.y }));
  const stops = [from, ...turning, to];
  const off = Math.sqrt(Math.max(0, radius * radius - (x - centre.x) ** 2));
  return stops.slice(1).flatMap((end, i) => {
    const begin = stops[i]!;
    if (begin.x > x === end.x > x) return [];
    // Between two turning points an arc runs wholly above its centre or wholly below it.
    const above = begin.y + end.y > 2 * centre.y || (begin.y + end.y === 2 * centre.y && begin.x > end.x === sweep > 0);
    return [centre.y + (above ? off : -off)];
  });
}

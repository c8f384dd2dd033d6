import { finite, following, given, type Outcome } from '../outcome.ts';
import { chordsAcross } from './across.ts';
import { shapeBounds } from './measure.ts';
import type { Shape } from './shape.ts';

const slices = 256;

/**
 * Area (m2) of the stretch of an outline between two stations along x (m), by the midpoint rule over 256 slices: to better than
 * 0.1 % of the area. 0 where the stations do not enclose any of it.
 */
export function areaBetween(shape: Shape, from: number, to: number): Outcome {
  return given([finite('where the stretch begins', from), finite('where the stretch ends', to)], () =>
    following(shapeBounds(shape), ({ low, high }) => {
      const start = Math.max(from, low.x);
      const step = (Math.min(to, high.x) - start) / slices;
      if (step <= 0) return 0;
      let area = 0;
      for (let i = 0; i < slices; i++) {
        const chords = chordsAcross(shape, start + (i + 0.5) * step);
        if ('problem' in chords) return chords;
        area += step * chords.reduce((sum, c) => sum + c.high - c.low, 0);
      }
      return area;
    }),
  );
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bulgeOf, segmentBox, segmentsOf, sweepsOver } from '../../../calc/outline/arc.ts';
import type { Contour, Vertex } from '../../../calc/outline/contour.ts';
import { contourFault } from '../../../calc/outline/contour-fault.ts';
import { tidiedContour } from '../../../calc/outline/contour-measure.ts';
import { meetings } from '../../../calc/outline/meeting.ts';

/** The first pair of segments that share no corner and meet, found by looking at all pairs. */
function byAllPairs(contour: Contour): readonly [number, number] | undefined {
  const segments = segmentsOf(contour);
  const n = segments.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++)
      if ((j + 1) % n !== i && meetings(segments[i]!, segments[j]!, 1e-12).length > 0) return [i, j];
  return undefined;
}

const vertex = fc.record({
  x: fc.integer({ min: 0, max: 40 }),
  y: fc.integer({ min: 0, max: 40 }),
  bend: fc.constantFrom(0, 0, 0.4, -0.4, 1.5, -2.5),
});

describe('a line that may cross itself', () => {
  it('is told so wherever a look at all pairs of its segments finds it', () => {
    let [crossing, fit] = [0, 0];
    fc.assert(
      fc.property(fc.array(vertex, { minLength: 5, maxLength: 24 }), (points) => {
        const line = points.map(({ x, y, bend }): Vertex => {
          const place = { x: x / 40 + y / 971, y: y / 40 - x / 1013 };
          return bend === 0 ? place : { ...place, bulge: bulgeOf(bend) };
        });
        const contour = tidiedContour(line);
        const pair = byAllPairs(contour);
        const fault = contourFault(contour);
        if (fault === undefined) fit++;
        if (pair === undefined) return;
        crossing++;
        expect(fault?.kind).toMatch(/crosses itself|doubles back/);
        if (fault?.kind !== 'crosses itself') return;
        const [i, j] = fault.segments;
        expect(i * contour.length + j).toBeLessThanOrEqual(pair[0] * contour.length + pair[1]);
      }),
      { numRuns: 400 },
    );
    expect(crossing).toBeGreaterThan(100);
    expect(fit).toBeLessThan(400);
  });

  it('is found in a spiral of many points that ends across its own windings, and not before it does', () => {
    const spiral = (windings: number, across: boolean): Contour => {
      const n = 1500;
      const out = Array.from({ length: n }, (_, i) => {
        const a = (2 * Math.PI * windings * i) / n;
        return { x: (0.1 + 0.02 * a) * Math.cos(a), y: (0.1 + 0.02 * a) * Math.sin(a) };
      });
      // back beside itself, or straight home through all windings
      const back = across ? [] : out.map(({ x, y }) => ({ x: 0.9 * x, y: 0.9 * y })).reverse();
      return tidiedContour([...out, ...back]);
    };
    expect(contourFault(spiral(3, true))?.kind).toBe('crosses itself');
    expect(contourFault(spiral(0.9, false))).toBeUndefined();
  });
});

it('the box of an arc is that of its ends and of the outermost points of its circle that it sweeps over', () => {
  fc.assert(
    fc.property(vertex, vertex, fc.double({ min: -6.2, max: 6.2, noNaN: true }), (from, to, sweep) => {
      fc.pre(Math.hypot(from.x - to.x, from.y - to.y) > 0 && Math.abs(sweep) > 1e-3);
      const [s] = segmentsOf([
        { x: from.x, y: from.y, bulge: bulgeOf(sweep) },
        { x: to.x, y: to.y },
      ]);
      const { centre, radius } = s!.arc!;
      const over = (angle: number) => sweepsOver(s!.arc!, angle);
      const size = radius + 40;
      const box = segmentBox(s!);
      const expected = [
        over(Math.PI) ? centre.x - radius : Math.min(from.x, to.x),
        over(-Math.PI / 2) ? centre.y - radius : Math.min(from.y, to.y),
        over(0) ? centre.x + radius : Math.max(from.x, to.x),
        over(Math.PI / 2) ? centre.y + radius : Math.max(from.y, to.y),
      ];
      for (const [i, value] of expected.entries()) expect(Math.abs(box[i]! - value)).toBeLessThan(1e-9 * size);
    }),
  );
});

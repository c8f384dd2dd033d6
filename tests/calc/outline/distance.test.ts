import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordsAcross, halfWidthAcross } from '../../../calc/outline/across.ts';
import { contains, signedDistance } from '../../../calc/outline/distance.ts';
import { shapeArea, shapeBounds, shapePerimeter } from '../../../calc/outline/measure.ts';
import { samples } from '../../../calc/outline/samples.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { convexShape, ell, star } from './shapes.ts';

const place = fc.record({
  x: fc.double({ min: -4, max: 4, noNaN: true }),
  y: fc.double({ min: -4, max: 4, noNaN: true }),
});

describe('the distance of a point to an outline', () => {
  it('is that to the nearest of many points on it', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), place, (shape, point) => {
        const step = valueOf(shapePerimeter(shape)) / 3000;
        const nearest = Math.min(...valueOf(samples(shape, step)).map((p) => Math.hypot(p.x - point.x, p.y - point.y)));
        const distance = Math.abs(valueOf(signedDistance(shape, point)));
        expect(distance).toBeLessThanOrEqual(nearest + 1e-6 + step * step);
        expect(distance).toBeGreaterThanOrEqual(nearest - step);
      }),
      { numRuns: 60 },
    );
  });

  it('is 0 on the outline', () => {
    fc.assert(
      fc.property(convexShape, (shape) => {
        const perimeter = valueOf(shapePerimeter(shape));
        for (const p of valueOf(samples(shape, perimeter / 40))) {
          expect(Math.abs(valueOf(signedDistance(shape, p)))).toBeLessThan(perimeter * 2e-3);
          if (shape.kind !== 'ellipse') expect(contains(shape, p)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('tells inside from outside', () => {
    expect(contains(ell, { x: 0.2, y: 0.9 })).toBe(true);
    expect(contains(ell, { x: 0.6, y: 0.6 })).toBe(false);
    expect(signedDistance(ell, { x: 0.6, y: 0.5 })).toBeCloseTo(0.1, 12);
    expect(signedDistance({ kind: 'ellipse', length: 4, width: 2 }, { x: 0, y: 0 })).toBeCloseTo(-1, 12);
    expect(signedDistance({ kind: 'ellipse', length: 2, width: 4 }, { x: 0, y: 3 })).toBeCloseTo(1, 12);
    expect(problemOf(contains(ell, { x: Number.NaN, y: 0 }))).toMatch(/along x/);
  });
});

describe('the chords across a part', () => {
  it('add up to its area', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), (shape) => {
        const { low, length } = valueOf(shapeBounds(shape));
        const slices = 4000;
        let area = 0;
        for (let i = 0; i < slices; i++) {
          const chords = valueOf(chordsAcross(shape, low.x + ((i + 0.5) * length) / slices));
          area += chords.reduce((sum, c) => sum + c.high - c.low, 0) * (length / slices);
        }
        expectWithin(area, valueOf(shapeArea(shape)), 1e-3);
      }),
      { numRuns: 40 },
    );
  });

  it('gives the half width at a station, and 0 beyond the ends', () => {
    const sled = { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 } as const;
    expect(halfWidthAcross(sled, 0)).toBeCloseTo(0.21, 12);
    expect(halfWidthAcross(sled, 0.59)).toBeCloseTo(0.07, 12);
    expect(halfWidthAcross(sled, 0.6)).toBe(0);
    expect(halfWidthAcross({ kind: 'ellipse', length: 2, width: 1 }, 0.6)).toBeCloseTo(0.4, 12);
    const u = {
      kind: 'polygon',
      points: [
        [0, 0],
        [3, 0],
        [3, 2],
        [2, 2],
        [2, 1],
        [1, 1],
        [1, 2],
        [0, 2],
      ].map(([x, y]) => ({ x: y ?? 0, y: x ?? 0 })),
    } as const;
    expect(valueOf(chordsAcross(u, 1.5))).toEqual([
      { low: 0, high: 1 },
      { low: 2, high: 3 },
    ]);
  });
});

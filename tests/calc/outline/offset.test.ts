import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedDistance } from '../../../calc/outline/distance.ts';
import { shapeArea, shapeBounds, shapePerimeter } from '../../../calc/outline/measure.ts';
import { offsetArea, offsetPerimeter } from '../../../calc/outline/offset.ts';
import type { Shape } from '../../../calc/outline/shape.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { convexShape, ell, square, star } from './shapes.ts';

/** Area of the points no more than `level` outside an outline, counted on a grid. */
function countedArea(shape: Shape, level: number, cells = 300): number {
  const { low, high } = valueOf(shapeBounds(shape));
  const margin = Math.max(0, level);
  const dx = (high.x - low.x + 2 * margin) / cells;
  const dy = (high.y - low.y + 2 * margin) / cells;
  let inside = 0;
  for (let i = 0; i < cells; i++) {
    for (let j = 0; j < cells; j++) {
      const point = { x: low.x - margin + (i + 0.5) * dx, y: low.y - margin + (j + 0.5) * dy };
      if (valueOf(signedDistance(shape, point)) <= level) inside++;
    }
  }
  return inside * dx * dy;
}

describe('the area of an offset outline', () => {
  it('grows by P d + pi d2 round a convex outline (Steiner 1840)', () => {
    fc.assert(
      fc.property(convexShape, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (shape, by) => {
        const area = valueOf(shapeArea(shape)) + valueOf(shapePerimeter(shape)) * by + Math.PI * by * by;
        expectWithin(valueOf(offsetArea(shape, by)), area, 1e-12);
      }),
    );
  });

  it('is that which a grid of points counts, outwards and inwards, with inside corners and without', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), fc.double({ min: -0.4, max: 0.4, noNaN: true }), (shape, share) => {
        const { length, width } = valueOf(shapeBounds(shape));
        const by = share * Math.min(length, width);
        const area = valueOf(shapeArea(shape));
        expect(Math.abs(valueOf(offsetArea(shape, by)) - countedArea(shape, by))).toBeLessThan(0.012 * area);
      }),
      { numRuns: 25 },
    );
  }, 60_000);

  it('is exact inwards for the parametric outlines', () => {
    const sled = { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 } as const;
    expectWithin(valueOf(offsetArea(sled, -0.04)), 1.1 * 0.34 - (4 - Math.PI) * 0.01, 1e-12);
    expectWithin(valueOf(offsetArea(sled, -0.18)), 0.82 * 0.06, 1e-12);
    expect(offsetArea(sled, -0.21)).toBe(0);
    expectWithin(valueOf(offsetArea({ kind: 'circle', diameter: 1 }, -0.1)), Math.PI * 0.16, 1e-12);
    const triangle: Shape = {
      kind: 'polygon',
      points: [
        { x: 0, y: 0 },
        { x: 3, y: 0 },
        { x: 0, y: 4 },
      ],
    };
    // its inscribed circle has a radius of 1: inwards it shrinks in proportion
    expectWithin(valueOf(offsetArea(triangle, -0.25)), 6 * 0.75 ** 2, 1e-12);
    expect(offsetArea(triangle, -1.01)).toBe(0);
  });

  it('passes from one form of the ellipse to the other without a step', () => {
    const ellipse = { kind: 'ellipse', length: 2, width: 1 } as const;
    const before = valueOf(offsetArea(ellipse, -0.25 + 1e-9));
    const after = valueOf(offsetArea(ellipse, -0.25 - 1e-9));
    expectWithin(before, after, 1e-7);
    expectWithin(valueOf(offsetArea(ellipse, -0.4)), countedArea(ellipse, -0.4, 1500), 5e-3);
    expect(offsetArea(ellipse, -0.5)).toBe(0);
  });

  it('is measured to 0.1 % where an outline has an inside corner', () => {
    const by = 0.1;
    // outwards: five rounded corners, and two bands that share a square at the inside corner
    const outwards = 0.64 + 4 * by + (5 * Math.PI * by * by) / 4 - by * by;
    expectWithin(valueOf(offsetArea(ell, by)), outwards, 1e-3);
    // inwards: an L of 0.8 by 0.8 m with limbs of 0.2 m, and what a round leaves of its square inside corner
    const inwards = 0.8 * 0.8 - 0.6 * 0.6 + (1 - Math.PI / 4) * by * by;
    expectWithin(valueOf(offsetArea(ell, -by)), inwards, 1e-3);
  });

  it('gives the line outside for tape and tubes', () => {
    expect(offsetPerimeter(square(1), 0.06)).toBeCloseTo(4 + 2 * Math.PI * 0.06, 12);
    expect(problemOf(offsetPerimeter(square(1), -0.06))).toMatch(/offset/);
    expect(problemOf(offsetArea(square(1), Number.POSITIVE_INFINITY))).toMatch(/offset/);
  });
});

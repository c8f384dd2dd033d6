import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourPerimeter } from '../../../calc/outline/contour-measure.ts';
import { centredShape, shapeArea, shapeBounds, shapePerimeter } from '../../../calc/outline/measure.ts';
import { signedArea } from '../../../calc/outline/polygon.ts';
import { samples } from '../../../calc/outline/samples.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { convexShape, ell, polygon, star } from './shapes.ts';

/** Length round an ellipse by the trapezium rule over the eccentric angle, which converges fast on a period. */
function integratedPerimeter(a: number, b: number): number {
  const steps = 200_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const t = (2 * Math.PI * i) / steps;
    sum += Math.hypot(a * Math.sin(t), b * Math.cos(t));
  }
  return (sum * 2 * Math.PI) / steps;
}

/** Ramanujan's second approximation of 1914. */
function ramanujan(a: number, b: number): number {
  const h = ((a - b) / (a + b)) ** 2;
  return Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

describe('area and perimeter of outlines', () => {
  it('has the closed forms of plane geometry', () => {
    const rounded = { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 } as const;
    expectWithin(valueOf(shapeArea(rounded)), 0.4956 - (4 - Math.PI) * 0.0196, 1e-14);
    expectWithin(valueOf(shapePerimeter(rounded)), 3.2 - (8 - 2 * Math.PI) * 0.14, 1e-14);
    expectWithin(valueOf(shapeArea({ kind: 'circle', diameter: 2 })), Math.PI, 1e-14);
    expectWithin(valueOf(shapePerimeter({ kind: 'circle', diameter: 2 })), 2 * Math.PI, 1e-14);
    expectWithin(valueOf(shapeArea({ kind: 'capsule', length: 3, width: 1 })), 2 + Math.PI / 4, 1e-14);
    expectWithin(valueOf(shapePerimeter({ kind: 'capsule', length: 3, width: 1 })), 4 + Math.PI, 1e-14);
    expect(valueOf(shapeArea(ell))).toBeCloseTo(0.64, 12);
    expect(valueOf(shapePerimeter(ell))).toBeCloseTo(4, 12);
  });

  it('does not mind which way round a polygon is drawn, nor points on its straight edges', () => {
    const other = { kind: 'polygon', points: [...ell.points].reverse() } as const;
    expect(valueOf(shapeArea(other))).toBeCloseTo(0.64, 12);
    expect(valueOf(shapeArea(polygon([0, 0], [1, 0], [2, 0], [2, 1], [0, 1])))).toBeCloseTo(2, 12);
  });

  it.each([
    [1, 1],
    [1, 0.5],
    [0.59, 0.21],
    [1, 0.05],
    [0.2, 0.7],
    [1, 0.001],
  ])('measures an ellipse of half axes %f and %f as numerical integration does', (a, b) => {
    const perimeter = valueOf(shapePerimeter({ kind: 'ellipse', length: 2 * a, width: 2 * b }));
    expectWithin(perimeter, integratedPerimeter(a, b), 1e-9);
    expectWithin(perimeter, ramanujan(a, b), 5e-4);
  });

  it('measures the ellipse of half axes 1 and 1/2 as tables of E(m) do', () => {
    // E(m = 3/4) = 1.2110560276, Abramowitz and Stegun 1964, table 17.1 (from memory)
    expectWithin(valueOf(shapePerimeter({ kind: 'ellipse', length: 2, width: 1 })), 4 * 1.2110560276, 1e-9);
  });

  it('agrees with the polygon of its sampled edge', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), (shape) => {
        const perimeter = valueOf(shapePerimeter(shape));
        const points = valueOf(samples(shape, perimeter / 2000));
        expectWithin(signedArea(points), valueOf(shapeArea(shape)), 2e-4);
        expectWithin(contourPerimeter(points), perimeter, 2e-4);
      }),
      { numRuns: 60 },
    );
  });

  it('puts the bounding box round it, and the centre of that at the origin', () => {
    const bounds = valueOf(shapeBounds(ell));
    expect(bounds).toEqual({ low: { x: 0, y: 0 }, high: { x: 1, y: 1 }, length: 1, width: 1 });
    const centred = valueOf(shapeBounds(valueOf(centredShape(ell))));
    expect(centred.low).toEqual({ x: -0.5, y: -0.5 });
  });

  it('says what is wrong with sizes that make no outline', () => {
    expect(problemOf(shapeArea({ kind: 'rectangle', length: 0, width: 1 }))).toMatch(/length of the rectangle/);
    expect(problemOf(shapeArea({ kind: 'circle', diameter: Number.NaN }))).toMatch(/diameter/);
    expect(problemOf(shapeArea({ kind: 'rounded', length: 1, width: 0.2, corner: 0.11 }))).toMatch(/half the shorter/);
    expect(problemOf(shapeArea({ kind: 'rectangle', length: 1e200, width: 1e200 }))).toMatch(
      /between 1 um and 1000 km/,
    );
    expect(problemOf(shapeArea({ kind: 'path', data: 'M0 0' }))).toMatch(/no curves/);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordsAcross } from '../../../calc/outline/across.ts';
import { bulgeOf } from '../../../calc/outline/arc.ts';
import type { Contour } from '../../../calc/outline/contour.ts';
import { contourDistance } from '../../../calc/outline/contour-distance.ts';
import { contourFault } from '../../../calc/outline/contour-fault.ts';
import { contourArea, contourBox, contourPerimeter, reversed } from '../../../calc/outline/contour-measure.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import { signedDistance } from '../../../calc/outline/distance.ts';
import { flattened } from '../../../calc/outline/flatten.ts';
import { shapeArea, shapeBounds, shapePerimeter } from '../../../calc/outline/measure.ts';
import { plainForm } from '../../../calc/outline/plain.ts';
import { signedArea } from '../../../calc/outline/polygon.ts';
import { samples } from '../../../calc/outline/samples.ts';
import type { Point, Shape } from '../../../calc/outline/shape.ts';
import { apply, type Matrix, moved, transformed, turned } from '../../../calc/outline/transform.ts';
import { turns } from '../../../calc/outline/turns.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { convexShape, star } from './shapes.ts';

const asContour = (shape: Shape): Shape & { kind: 'contour' } => ({
  kind: 'contour',
  vertices: valueOf(contourOf(shape)),
});
const anyShape = fc.oneof(convexShape, star);
const share = fc.double({ min: -1, max: 1, noNaN: true });

/** A quarter of a ring: the part between two circles about the origin, 0.1 m and 0.3 m. */
const ring: Contour = [
  { x: 0.3, y: 0, bulge: bulgeOf(Math.PI / 2) },
  { x: 0, y: 0.3 },
  { x: 0, y: 0.1, bulge: bulgeOf(-Math.PI / 2) },
  { x: 0.1, y: 0 },
];

describe('a line of straights and arcs', () => {
  it('measures the quarter of a ring as plane geometry does', () => {
    expectWithin(contourArea(ring), (Math.PI / 4) * (0.09 - 0.01), 1e-14);
    expectWithin(contourPerimeter(ring), (Math.PI / 2) * 0.4 + 0.4, 1e-14);
    expect(contourArea(reversed(ring))).toBeCloseTo(-contourArea(ring), 15);
    expect(reversed(reversed(ring))).toEqual(ring);
  });

  it('measures every parametric outline as its closed form does; an ellipse to 2 um', () => {
    fc.assert(
      fc.property(convexShape, (shape) => {
        const contour = asContour(shape);
        // Corners finer than a thousand-millionth of the shape are none.
        const within = shape.kind === 'ellipse' ? 1e-4 : 1e-8;
        const off = valueOf(shapeArea(contour)) - valueOf(shapeArea(shape));
        expect(Math.abs(off)).toBeLessThan((shape.kind === 'ellipse' ? 2e-6 : 1e-9) * valueOf(shapePerimeter(shape)));
        expectWithin(valueOf(shapePerimeter(contour)), valueOf(shapePerimeter(shape)), within);
        const [mine, its] = [valueOf(shapeBounds(contour)), valueOf(shapeBounds(shape))];
        expect(mine.length).toBeCloseTo(its.length, 9);
        expect(mine.width).toBeCloseTo(its.width, 9);
      }),
    );
  });

  it('places points as the closed forms do', () => {
    fc.assert(
      fc.property(convexShape, share, share, (shape, u, v) => {
        const { length, width } = valueOf(shapeBounds(shape));
        const point = { x: u * length, y: v * width };
        const off = valueOf(signedDistance(asContour(shape), point)) - valueOf(signedDistance(shape, point));
        expect(Math.abs(off)).toBeLessThan(shape.kind === 'ellipse' ? 4e-6 : 1e-9);
      }),
      { numRuns: 400 },
    );
  });

  it('tells inside from outside on its own chords, corners and the heights of its points', () => {
    const circle = asContour({ kind: 'circle', diameter: 2 });
    const capsule = asContour({ kind: 'capsule', length: 3, width: 1 });
    const box = asContour({ kind: 'rounded', length: 1, width: 1, corner: 0.25 });
    const cases: readonly [Shape, Point, number][] = [
      [circle, { x: 0, y: 0 }, -1],
      [circle, { x: 0.5, y: 0 }, -0.5],
      [circle, { x: -0.5, y: 0 }, -0.5],
      [circle, { x: 2, y: 0 }, 1],
      [circle, { x: -2, y: 0 }, 1],
      [capsule, { x: 1, y: 0 }, -0.5],
      [capsule, { x: -1, y: 0.25 }, -0.25],
      [capsule, { x: 1, y: -0.25 }, -0.25],
      [capsule, { x: 1.75, y: 0 }, 0.25],
      [box, { x: 0.375, y: 0.375 }, -0.25 + Math.SQRT2 * 0.125],
      [box, { x: 0.25, y: 0.5 }, 0],
      [box, { x: -0.75, y: 0.25 }, 0.25],
      [box, { x: -0.25, y: 0.25 }, -0.25],
    ];
    for (const [shape, point, distance] of cases)
      expect(valueOf(signedDistance(shape, point)), JSON.stringify(point)).toBeCloseTo(distance, 12);
  });

  it('is walked with turns that add up to one round (Hopf 1935), arcs whole', () => {
    fc.assert(
      fc.property(anyShape, (shape) => {
        const found = valueOf(turns(asContour(shape)));
        expect(found.reduce((sum, s) => sum + s.turn, 0)).toBeCloseTo(2 * Math.PI, 8);
      }),
    );
    expect(valueOf(turns(asContour({ kind: 'circle', diameter: 1 }))).map((s) => [s.kind, s.turn])).toEqual([
      ['arc', 2 * Math.PI],
    ]);
    const sled = { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 } as const;
    expect(valueOf(turns(asContour(sled))).map((s) => s.kind)).toEqual(valueOf(turns(sled)).map((s) => s.kind));
    expect(valueOf(turns({ kind: 'contour', vertices: ring })).map((s) => s.kind)).toEqual([
      'arc',
      'corner',
      'straight',
      'corner',
      'arc',
      'corner',
      'straight',
      'corner',
    ]);
  });

  it('is sampled on itself and crossed where the closed forms are', () => {
    fc.assert(
      fc.property(convexShape, share, (shape, u) => {
        const contour = asContour(shape);
        for (const p of valueOf(samples(contour, valueOf(shapePerimeter(shape)) / 100)))
          expect(Math.abs(valueOf(signedDistance(contour, p)))).toBeLessThan(1e-9);
        const x = u * 0.499 * valueOf(shapeBounds(shape)).length;
        const [mine, its] = [valueOf(chordsAcross(contour, x)), valueOf(chordsAcross(shape, x))];
        expect(mine.length).toBe(its.length);
        const across = (chords: typeof mine) => chords.reduce((sum, c) => sum + c.high - c.low, 0);
        expect(Math.abs(across(mine) - across(its))).toBeLessThan(2e-3 * valueOf(shapeBounds(shape)).width);
      }),
      { numRuns: 60 },
    );
  });

  it('lies within the chord asked for of the polygon that it is flattened to', () => {
    const sled = asContour({ kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 });
    const points = flattened(sled.vertices, 0.02e-3);
    expect(points.length).toBe(4 + 4 * Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - 0.02e-3 / 0.14))));
    const middle = points.map((p, i): Point => {
      const q = points[(i + 1) % points.length] ?? p;
      return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    });
    expect(Math.min(...middle.map((p) => valueOf(signedDistance(sled, p))))).toBeGreaterThanOrEqual(-0.02e-3);
    expectWithin(signedArea(points), valueOf(shapeArea(sled)), 1e-4);
  });
});

describe('a line that is no outline', () => {
  const square: Contour = [
    { x: 0, y: 0 },
    { x: 1, y: 0 },
    { x: 1, y: 1 },
    { x: 0, y: 1 },
  ];

  it('is told with the place where it crosses itself, arcs too', () => {
    const bowtie: Contour = [square[0]!, square[2]!, square[1]!, square[3]!];
    expect(contourFault(bowtie)).toMatchObject({ kind: 'crosses itself', at: { x: 0.5, y: 0.5 } });
    // The upper side bulges down through the lower one.
    const sunk: Contour = [square[0]!, square[1]!, { x: 1, y: 1, bulge: -Math.tan(Math.PI / 3) }, square[3]!];
    const fault = contourFault(sunk);
    expect(fault).toMatchObject({ kind: 'crosses itself' });
    // Source of the place: the circle through (0, 1) and (1, 1) that turns by 4/3 pi has its middle at y = 1 - 0.5 / tan 60 deg.
    const middle = 1 - 0.5 / Math.tan(Math.PI / 3);
    const radius = 0.5 / Math.sin(Math.PI / 3);
    if (fault === undefined || !('at' in fault)) throw new Error('no place');
    expect(Math.hypot(fault.at.x - 0.5, fault.at.y - middle)).toBeCloseTo(radius, 9);
  });

  it('doubles back, has no area or too few points', () => {
    expect(contourFault([square[0]!, square[1]!, { x: 0.5, y: 0 }, square[2]!])?.kind).toBe('doubles back');
    expect(contourFault([square[0]!, square[1]!])?.kind).toBe('too few points');
    expect(contourFault([{ x: Number.NaN, y: 0 }, square[1]!, square[2]!])?.kind).toBe('no number');
    expect(JSON.stringify(problemOf(plainForm({ kind: 'contour', vertices: [] })))).toContain('at least 3 points');
  });

  it('is never a fit outline, nor one with rounding at its tangents', () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: -1e-7, max: 1e-7, noNaN: true }), (shape, slip) => {
        const vertices = valueOf(contourOf(shape)).map((v, i) => ({ ...v, x: v.x + (i % 2) * slip }));
        expect(contourFault(vertices)).toBeUndefined();
      }),
    );
  });

  it('is read without end or error, whatever its numbers are', () => {
    const vertex = fc.record({ x: fc.double(), y: fc.double(), bulge: fc.option(fc.double(), { nil: undefined }) });
    fc.assert(
      fc.property(fc.array(vertex, { maxLength: 12 }), (vertices) => {
        const line = vertices.map(({ x, y, bulge }) => (bulge === undefined ? { x, y } : { x, y, bulge }));
        const shape: Shape = { kind: 'contour', vertices: line };
        plainForm(shape);
        for (const figure of [shapeArea(shape), shapePerimeter(shape), signedDistance(shape, { x: 0, y: 0 })])
          if (typeof figure === 'number') expect(Number.isFinite(figure)).toBe(true);
      }),
    );
  });
});

describe('a transformed line', () => {
  it('keeps area and length where it is turned, mirrored and moved, and its distances', () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.double({ min: -7, max: 7, noNaN: true }),
        share,
        fc.boolean(),
        (shape, angle, by, flip) => {
          const contour = valueOf(contourOf(shape));
          const turnedBy = turned(angle);
          const matrix: Matrix = { ...turnedBy, ...(flip ? { c: -turnedBy.c, d: -turnedBy.d } : {}), e: by, f: -by };
          const found = transformed(contour, matrix);
          expectWithin(contourArea(found), contourArea(contour), 1e-9);
          expectWithin(contourPerimeter(found), contourPerimeter(contour), 1e-9);
          const p = { x: by, y: by / 2 };
          expect(contourDistance(found, apply(matrix, p))).toBeCloseTo(contourDistance(contour, p), 9);
        },
      ),
    );
  });

  it('becomes the ellipse where a circle is stretched', () => {
    const circle = valueOf(contourOf({ kind: 'circle', diameter: 1 }));
    const stretched = transformed(circle, { a: 1, b: 0, c: 0, d: 0.4, e: 0, f: 0 });
    expectWithin(contourArea(stretched), Math.PI * 0.5 * 0.2, 1e-5);
    // Source: Ramanujan 1914, second approximation, better than 1e-7 here.
    const h = ((0.5 - 0.2) / (0.5 + 0.2)) ** 2;
    const ramanujan = Math.PI * 0.7 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expectWithin(contourPerimeter(stretched), ramanujan, 1e-5);
    expect(stretched.length).toBeLessThan(200);
    const [low, high] = contourBox(transformed(stretched, moved(1, 1)));
    expect([low.x, low.y, high.x, high.y].map((v) => Math.round(v * 1e5) / 1e5)).toEqual([0.5, 0.8, 1.5, 1.2]);
  });
});

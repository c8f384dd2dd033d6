import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedDistance } from '../../../calc/outline/distance.ts';
import { netArea, shapeInsideShape, shapesOverlap, standsOut } from '../../../calc/outline/placed.ts';
import { samples } from '../../../calc/outline/samples.ts';
import { intoFrame, origin, outOfFrame, type Placed, type Shape } from '../../../calc/outline/shape.ts';
import { problemOf, valueOf } from '../outcomes.ts';
import { ell, square } from './shapes.ts';

const at = (x: number, y: number) => ({ x, y });

describe('shapes on a part', () => {
  const deck = { shape: { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 }, centre: origin } as const;

  it('are told inside, with what they clear the edge by', () => {
    const mount = {
      shape: { kind: 'rounded', length: 0.26, width: 0.18, corner: 0.04 },
      centre: at(-0.38, 0),
    } as const;
    expect(shapeInsideShape(mount, deck)).toBe(true);
    expect(valueOf(standsOut(mount, deck)).by).toBeCloseTo(-0.08, 6);
  });

  it('are told outside, with how far', () => {
    const insert = { shape: square(0.1), centre: at(0.5, 0.15) };
    const out = valueOf(standsOut(insert, deck));
    // corner of the insert at (0.55, 0.20), centre of the rounding at (0.45, 0.07)
    expect(out.by).toBeCloseTo(Math.hypot(0.1, 0.13) - 0.14, 9);
  });

  it('follow a turn', () => {
    const strip = {
      shape: { kind: 'rectangle', length: 0.5, width: 0.06 },
      centre: origin,
      angle: Math.PI / 2,
    } as const;
    expect(shapeInsideShape(strip, deck)).toBe(false);
    expect(shapeInsideShape({ ...strip, angle: 0 }, deck)).toBe(true);
    const back = outOfFrame(strip, intoFrame(strip, at(0.3, -0.2)));
    expect(back.x).toBeCloseTo(0.3, 12);
    expect(back.y).toBeCloseTo(-0.2, 12);
  });

  it('see the inside corner of an outline', () => {
    expect(shapeInsideShape({ shape: square(0.3), centre: at(0.4, 0.4) }, { shape: ell, centre: origin })).toBe(false);
    expect(shapeInsideShape({ shape: square(0.3), centre: at(0.2, 0.2) }, { shape: ell, centre: origin })).toBe(true);
  });

  it('overlap or not', () => {
    const a = { shape: square(1), centre: origin };
    expect(shapesOverlap(a, { shape: square(1), centre: at(0.9, 0.9) })).toBe(true);
    expect(shapesOverlap(a, { shape: square(1), centre: at(1, 0) })).toBe(false);
    expect(shapesOverlap(a, { shape: square(0.1), centre: origin })).toBe(true);
    expect(shapesOverlap(a, a)).toBe(true);
    const cross = { shape: { kind: 'rectangle', length: 3, width: 0.2 }, centre: origin } as const;
    expect(shapesOverlap(cross, { ...cross, angle: Math.PI / 2 })).toBe(true);
  });

  it('are taken out of the area as cutouts', () => {
    const hole = { shape: { kind: 'circle', diameter: 0.2 }, centre: at(0.3, 0) } as const;
    expect(netArea(square(1), [hole, { ...hole, centre: at(-0.3, 0) }])).toBeCloseTo(1 - 2 * Math.PI * 0.01, 12);
    expect(problemOf(netArea(square(1), [{ ...hole, centre: at(0.45, 0) }]))).toMatch(/cutout 1 is not wholly inside/);
    expect(problemOf(netArea(square(1), [hole, { ...hole, centre: at(0.4, 0) }]))).toMatch(/cutouts 1 and 2 overlap/);
  });
});

describe('what is told in closed form', () => {
  const size = fc.double({ min: 0.05, max: 2, noNaN: true });
  const box: fc.Arbitrary<Shape> = fc
    .tuple(size, size, fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([length, width, round]) => ({
      kind: 'rounded',
      length,
      width,
      corner: (round * Math.min(length, width)) / 2,
    }));
  const ellipse: fc.Arbitrary<Shape> = fc
    .tuple(size, size)
    .map(([length, width]) => ({ kind: 'ellipse', length, width }));
  const triangle: fc.Arbitrary<Shape> = fc.tuple(size, size).map(([length, width]) => ({
    kind: 'polygon',
    points: [at(0, 0), at(length, 0), at(length / 3, width)],
  }));
  const placed = (shape: fc.Arbitrary<Shape>, angle: fc.Arbitrary<number>): fc.Arbitrary<Placed> =>
    fc
      .record({
        shape,
        x: fc.double({ min: -1, max: 1, noNaN: true }),
        y: fc.double({ min: -1, max: 1, noNaN: true }),
        angle,
      })
      .map(({ shape, x, y, angle }) => ({ shape, centre: at(x, y), angle }));
  const anyTurn = fc.double({ min: -4, max: 4, noNaN: true });
  const quarters = fc.integer({ min: -4, max: 4 }).map((turns) => (turns * Math.PI) / 2);
  const edgeOf = (shape: Placed) => valueOf(samples(shape.shape, 0.002)).map((point) => outOfFrame(shape, point));
  const depthIn = (shape: Placed) => (point: { x: number; y: number }) =>
    -valueOf(signedDistance(shape.shape, intoFrame(shape, point)));

  it('agrees with a walk round the edge in small steps on how far a shape stands out', () => {
    fc.assert(
      fc.property(
        placed(fc.oneof(box, triangle), anyTurn),
        placed(fc.oneof(box, ellipse, triangle), anyTurn),
        (inner, outer) => {
          const { by } = valueOf(standsOut(inner, outer));
          const walked = edgeOf(inner)
            .map(depthIn(outer))
            .reduce((most, depth) => Math.max(most, -depth), -Infinity);
          expect(by).toBeGreaterThan(walked - 1e-9);
          // a step of 2 mm round the smallest radius misses its height over the chord, and never more than the step
          expect(by).toBeLessThan(walked + 1e-3);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('agrees with it on whether two boxes overlap, but where they do by less than a step', () => {
    fc.assert(
      fc.property(placed(box, quarters), placed(box, quarters), (a, b) => {
        const deepest = [...edgeOf(a).map(depthIn(b)), ...edgeOf(b).map(depthIn(a)), depthIn(b)(a.centre)].reduce(
          (most, depth) => Math.max(most, depth),
          -Infinity,
        );
        if (Math.abs(deepest) < 1e-3) return;
        expect(shapesOverlap(a, b)).toBe(deepest > 0);
        expect(shapesOverlap(b, a)).toBe(deepest > 0);
      }),
      { numRuns: 60 },
    );
  });

  it('knows that circles have no sides', () => {
    const circle = { shape: { kind: 'circle', diameter: 1 }, centre: origin } as const;
    const askew = { shape: square(1), centre: at(1.2, 0), angle: Math.PI / 4 };
    // the corner of the square that points at the circle lies at 1.2 - sqrt(2) / 2 = 0.493
    expect(shapesOverlap(circle, askew)).toBe(true);
    expect(shapesOverlap(askew, circle)).toBe(true);
    expect(shapesOverlap(circle, { ...askew, centre: at(1.21, 0) })).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import { netArea, shapeInsideShape, shapesOverlap, standsOut } from '../../../calc/outline/placed.ts';
import { intoFrame, origin, outOfFrame } from '../../../calc/outline/shape.ts';
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

  it('are told outside, with how far and where', () => {
    const insert = { shape: square(0.1), centre: at(0.5, 0.15) };
    const out = valueOf(standsOut(insert, deck));
    // corner of the insert at (0.55, 0.20), centre of the rounding at (0.45, 0.07)
    expect(out.by).toBeCloseTo(Math.hypot(0.1, 0.13) - 0.14, 9);
    expect(out.at.x).toBeCloseTo(0.55, 9);
    expect(out.at.y).toBeCloseTo(0.2, 9);
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

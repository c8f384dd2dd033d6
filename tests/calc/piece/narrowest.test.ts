import { describe, expect, it } from 'vitest';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import type { Shape } from '../../../calc/outline/shape.ts';
import { narrowest } from '../../../calc/piece/narrowest.ts';
import { expectWithin, valueOf } from '../outcomes.ts';
import { ell, polygon } from '../outline/shapes.ts';

const inside = (shape: Shape) => narrowest(valueOf(contourOf(shape)));
const outside = (shape: Shape) => narrowest(valueOf(contourOf(shape)), 'outside');

describe('the narrowest place of an outline', () => {
  it('is half the width between parallel sides, and the radius of a circle', () => {
    expectWithin(inside({ kind: 'rounded', length: 0.7, width: 0.04, corner: 0.015 })!.half, 0.02, 1e-9);
    expectWithin(inside({ kind: 'capsule', length: 1, width: 0.2 })!.half, 0.1, 1e-3);
    expectWithin(inside({ kind: 'circle', diameter: 0.5 })!.half, 0.25, 1e-3);
    expectWithin(inside(ell)!.half, 0.2, 1e-9);
  });

  it('is the neck of a waist, with its place', () => {
    const waist = polygon([0, 0], [1, 0.2], [2, 0], [2, 1], [1, 0.5], [0, 1]);
    const { half, at } = inside(waist)!;
    // the disc that touches the lower corner (1, 0.2) and the upper one (1, 0.5) has at most half of 0.3 m
    expect(half).toBeLessThanOrEqual(0.1505);
    expect(half).toBeGreaterThan(0.13);
    expect(Math.abs(at.x - 1)).toBeLessThan(0.05);
    expect(at.y).toBeCloseTo(0.35, 1);
  });

  it('is none in a triangle with wide corners, and the width of a bay outside', () => {
    expect(outside({ kind: 'rectangle', length: 1, width: 0.5 })).toBeUndefined();
    expect(outside(ell)).toBeUndefined();
    const bay = polygon([0, 0], [1, 0], [1, 1], [0.55, 1], [0.55, 0.4], [0.45, 0.4], [0.45, 1], [0, 1]);
    const found = outside(bay)!;
    expectWithin(found.half, 0.05, 1e-6);
    expect(found.at.x).toBeCloseTo(0.5, 6);
  });
});

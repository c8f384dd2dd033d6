import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultWords, polygonFault } from '../../../calc/outline/polygon-fault.ts';
import { inWords } from '../../harness/words.ts';
import { convexPolygon, ell, polygon, star } from './shapes.ts';

describe('faults of a polygon', () => {
  it('finds none in fit outlines', () => {
    expect(polygonFault(ell.points)).toBeUndefined();
    fc.assert(
      fc.property(fc.oneof(convexPolygon, star), (shape) => {
        if (shape.kind === 'polygon') expect(polygonFault(shape.points)).toBeUndefined();
      }),
    );
  });

  it('names where a bow tie crosses itself', () => {
    const fault = polygonFault(polygon([0, 0], [2, 2], [2, 0], [0, 2]).points);
    expect(fault).toEqual({ kind: 'crosses itself', edges: [0, 2], at: { x: 1, y: 1 } });
    expect(fault && inWords(faultWords(fault))).toMatch(/edge from point 1 meets the edge from point 3/);
  });

  it('finds an outline that touches itself, doubles back, stands still or encloses nothing', () => {
    const touching = polygon([0, 0], [4, 0], [4, 2], [2, 0], [0, 2]);
    expect(polygonFault(touching.points)?.kind).toBe('crosses itself');
    expect(polygonFault(polygon([0, 0], [2, 0], [1, 0], [1, 1]).points)).toMatchObject({
      kind: 'doubles back',
      point: 1,
    });
    expect(polygonFault(polygon([0, 0], [1, 0], [1, 0], [0, 1]).points)).toMatchObject({
      kind: 'same point twice',
      point: 2,
    });
    expect(polygonFault(polygon([0, 0], [1, 0]).points)?.kind).toBe('too few points');
    expect(polygonFault(polygon([0, 0], [1, 0], [Number.NaN, 1]).points)).toEqual({ kind: 'no number', point: 2 });
    expect(polygonFault(polygon([0, 0], [1, 1], [2, 2]).points)?.kind).toBe('doubles back');
  });

  it('looks through ten thousand points without comparing every pair', () => {
    const points = Array.from({ length: 10_000 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 10_000;
      return { x: Math.cos(angle), y: Math.sin(angle) };
    });
    expect(polygonFault(points)).toBeUndefined();
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lanesFor } from '../../../calc/cloth/lanes.ts';
import { problemOf, valueOf } from '../outcomes.ts';

describe('a piece wider than its roll', () => {
  it('needs as many lanes as cover it with their laps, and not one more', () => {
    const metres = fc.double({ min: 0.05, max: 5, noNaN: true });
    fc.assert(
      fc.property(metres, metres, fc.double({ min: 0, max: 0.9, noNaN: true }), (width, roll, share) => {
        const lap = share * roll;
        const { lanes, joins, lapped } = valueOf(lanesFor(width, roll, lap));
        expect(lanes * roll - lapped).toBeGreaterThanOrEqual(width - 1e-6);
        if (lanes > 1) expect((lanes - 1) * roll - (joins - 1) * lap).toBeLessThan(width);
      }),
    );
  });

  it('needs none where it fits, and cannot be joined by a lap as wide as the roll', () => {
    expect(lanesFor(1.27, 1.27, 0.05)).toEqual({ lanes: 1, joins: 0, lapped: 0 });
    expect(lanesFor(1.28, 1.27, 0.05)).toEqual({ lanes: 2, joins: 1, lapped: 0.05 });
    expect(problemOf(lanesFor(2, 0.05, 0.05))).toMatch(/as wide as the roll/);
  });
});

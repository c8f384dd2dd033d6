import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dartNeeds, dartTotal, shareDarts } from '../../../calc/cloth/darts.ts';
import { excessLength } from '../../../calc/cloth/excess.ts';
import { offsetPerimeter } from '../../../calc/outline/offset.ts';
import { turns } from '../../../calc/outline/turns.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { convexShape, ell, star } from '../outline/shapes.ts';

const habit = { shear: 0.3, widest: 0.02, keepOff: 0.003 };
const overhang = { reach: 0.0384, landing: 0.025 };

describe('the excess of a wrapped edge', () => {
  it('is 2 pi (reach + landing) round any closed outline', () => {
    const metres = fc.double({ min: 0, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(convexShape, star), metres, metres, (shape, reach, landing) => {
        const total = valueOf(turns(shape)).reduce(
          (sum, s) => sum + valueOf(excessLength(s.turn, { reach, landing })),
          0,
        );
        expect(Math.abs(total - 2 * Math.PI * (reach + landing))).toBeLessThan(1e-9);
      }),
    );
  });

  it('is the difference between the free edge while flat and where it lands', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 2, noNaN: true }), (diameter) => {
        const flat = valueOf(offsetPerimeter({ kind: 'circle', diameter }, overhang.reach));
        const landed = Math.PI * (diameter - 2 * overhang.landing);
        expectWithin(valueOf(excessLength(2 * Math.PI, overhang)), flat - landed, 1e-9);
      }),
    );
  });
});

describe('darts', () => {
  it('take what shear leaves, none wider than the widest, none into the face', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), fc.double({ min: 0, max: 0.9, noNaN: true }), (shape, shear) => {
        const needs = valueOf(dartNeeds(valueOf(turns(shape)), overhang, { ...habit, shear }));
        for (const need of needs) {
          expect(need.width).toBeLessThanOrEqual(habit.widest * (1 + 1e-6));
          expect(need.depth).toBeLessThan(overhang.reach);
          expectWithin(need.width * (need.darts + need.slits), Math.abs(need.excess) * (1 - shear), 1e-9);
          expect(need.darts === 0 || need.excess > 0).toBe(true);
          expect(need.slits === 0 || need.excess < 0).toBe(true);
        }
        const turn = needs.reduce((sum, n) => sum + n.turn, 0);
        expectWithin(turn, 2 * Math.PI, 1e-9);
      }),
    );
  });

  it('sit at the four roundings of a deck, each on its own', () => {
    const deck = { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 } as const;
    const needs = valueOf(dartNeeds(valueOf(turns(deck)), overhang, habit));
    // a quarter turn times 63.4 mm is 99.6 mm; less 30 % that is 69.7 mm, in four darts of 17.4 mm
    expect(needs.map((n) => n.darts)).toEqual([4, 4, 4, 4]);
    expect(needs[0]?.width).toBeCloseTo(0.01743, 5);
    expect(dartTotal(needs)).toEqual({ darts: 16, slits: 0 });
  });

  it('go round a circle and an ellipse as one bend, and slits open at an inside corner', () => {
    const one = valueOf(dartNeeds(valueOf(turns({ kind: 'ellipse', length: 2, width: 1 })), overhang, habit));
    expect(one).toHaveLength(1);
    expect(one[0]?.darts).toBe(Math.ceil((2 * Math.PI * 0.0634 * 0.7) / 0.02));
    const corner = valueOf(dartNeeds(valueOf(turns(ell)), overhang, habit)).filter((n) => n.slits > 0);
    expect(corner).toMatchObject([{ darts: 0, slits: 4 }]);
  });

  it('are none where the cloth takes it all up', () => {
    const gentle = [{ turn: 0.001, length: 1 }];
    expect(dartTotal(valueOf(dartNeeds(gentle, overhang, { ...habit, shear: 0 })))).toEqual({ darts: 1, slits: 0 });
    expect(dartNeeds([{ turn: 0, length: 1 }], overhang, habit)).toEqual([]);
    expect(problemOf(dartNeeds(gentle, overhang, { ...habit, keepOff: 0.05 }))).toMatch(/no longer than/);
    expect(problemOf(dartNeeds(gentle, overhang, { ...habit, widest: 0 }))).toMatch(/widest dart/);
  });

  it('typed as a number for the whole piece are shared by turn, and none is lost', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), fc.integer({ min: 0, max: 200 }), (shape, total) => {
        const needs = valueOf(dartNeeds(valueOf(turns(shape)), overhang, habit));
        const shared = valueOf(shareDarts(needs, total));
        expect(shared.reduce((sum, n) => sum + n.darts, 0)).toBe(total);
      }),
    );
    const deck = valueOf(turns({ kind: 'rounded', length: 1, width: 0.4, corner: 0.1 }));
    const shared = valueOf(shareDarts(valueOf(dartNeeds(deck, overhang, habit)), 6));
    expect(shared.map((n) => n.darts)).toEqual([2, 2, 1, 1]);
    expect(problemOf(shareDarts([], 1.5))).toMatch(/whole number/);
  });
});

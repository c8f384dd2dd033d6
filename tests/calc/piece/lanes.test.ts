import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Contour } from '../../../calc/outline/contour.ts';
import { contourDistance } from '../../../calc/outline/contour-distance.ts';
import { contourArea, contourBox } from '../../../calc/outline/contour-measure.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import { areaOf } from '../../../calc/outline/contour-offset.ts';
import { transformed, turned } from '../../../calc/outline/transform.ts';
import { chordsOn, clipped } from '../../../calc/piece/half-plane.ts';
import { acrossRoll, joinsAcross, lanesOf } from '../../../calc/piece/lanes.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { convexShape, star } from '../outline/shapes.ts';

const contour = fc.oneof(convexShape, star).map((shape): Contour => valueOf(contourOf(shape)));
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

describe('cutting a contour by a line', () => {
  it('leaves two parts that make up the whole, with true arcs', () => {
    fc.assert(
      fc.property(contour, angle, fc.double({ min: -0.6, max: 0.6, noNaN: true }), (line, a, share) => {
        const normal = { x: Math.cos(a), y: Math.sin(a) };
        const [low, high] = contourBox(line);
        const from = share * Math.max(high.x - low.x, high.y - low.y);
        const one = clipped(line, { normal, from });
        const other = clipped(line, { normal: { x: -normal.x, y: -normal.y }, from: -from });
        expectWithin(areaOf(one) + areaOf(other), contourArea(line), 1e-9);
        // the area as a sum of chords, by Simpson's rule, agrees with what was cut off
        const along = chordsOn(line, { normal, from }).reduce((sum, [p, q]) => sum + q - p, 0);
        const lengths = [...one, ...other].length;
        expect(along > 0).toBe(lengths > 1);
      }),
    );
  });

  it('gives the half disc and its segment', () => {
    const disc = valueOf(contourOf({ kind: 'circle', diameter: 2 }));
    const half = clipped(disc, { normal: { x: 0, y: 1 }, from: 0.5 });
    expect(half).toHaveLength(1);
    // segment of a circle of radius 1 beyond a chord at 0.5: acos(0.5) - 0.5 sqrt(0.75)
    expectWithin(contourArea(half[0]!), Math.acos(0.5) - 0.5 * Math.sqrt(0.75), 1e-12);
    expect(chordsOn(disc, { normal: { x: 0, y: 1 }, from: 0.5 })[0]?.[1]).toBeCloseTo(Math.sqrt(0.75), 12);
    expect(chordsOn(disc, { normal: { x: 0, y: 1 }, from: 1.5 })).toEqual([]);
  });
});

describe('lanes of a piece', () => {
  const roll = fc.double({ min: 0.3, max: 1.5, noNaN: true });
  const lap = fc.double({ min: 0, max: 0.08, noNaN: true });

  it('cover it, are no wider than the roll and overlap by the lap', () => {
    fc.assert(
      fc.property(contour, angle, roll, lap, (line, grain, width, over) => {
        const span = acrossRoll(line, grain);
        const joins = valueOf(joinsAcross(span, width, over));
        const lanes = lanesOf(line, grain, joins, over);
        const turn = turned(-grain);
        for (const pieces of lanes)
          for (const piece of pieces) {
            const [low, high] = contourBox(transformed(piece, turn));
            expect(high.y - low.y).toBeLessThanOrEqual(width + 1e-9);
          }
        // the lanes are as large as the piece and the overlaps, which are cut out of it between two lines
        const normal = { x: -Math.sin(grain), y: Math.cos(grain) };
        const laps = joins.reduce((sum, at) => {
          const above = clipped(line, { normal, from: at - over / 2 });
          const both = above.flatMap((p) =>
            clipped(p, { normal: { x: -normal.x, y: -normal.y }, from: -at - over / 2 }),
          );
          return sum + (over === 0 ? 0 : areaOf(both));
        }, 0);
        expectWithin(areaOf(lanes.flat()), contourArea(line) + laps, 1e-6);
        // and every corner of the piece is covered by a lane
        for (const corner of line) expect(lanes.flat().some((p) => contourDistance(p, corner) < 1e-7)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('keep typed joins, and stay clear of darts and joins below as far as the roll lets them', () => {
    const span = { low: -1, high: 1 };
    expect(valueOf(joinsAcross(span, 1.27, 0.05))).toEqual([expect.closeTo(0, 9)]);
    const [moved] = valueOf(joinsAcross(span, 1.27, 0.05, [], [{ at: 0, by: 0.06 }]));
    expect(Math.abs(moved!)).toBeGreaterThanOrEqual(0.06 - 1e-9);
    expect(Math.abs(moved!)).toBeLessThan(0.08);
    expect(valueOf(joinsAcross(span, 1.27, 0.05, [0.2]))).toEqual([0.2]);
    // a typed join that leaves more than the roll on one side gets another one there
    expect(valueOf(joinsAcross(span, 1.27, 0.05, [0.6]))).toHaveLength(2);
    expect(problemOf(joinsAcross(span, 0.04, 0.05))).toMatch(/as wide as the roll/);
  });
});

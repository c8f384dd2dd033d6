import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DartHabit, dartNeeds, dartTotal } from '../../../calc/cloth/darts.ts';
import type { Contour } from '../../../calc/outline/contour.ts';
import { contourDistance } from '../../../calc/outline/contour-distance.ts';
import { contourArea } from '../../../calc/outline/contour-measure.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import { areaOf, offsetContour } from '../../../calc/outline/contour-offset.ts';
import type { Shape } from '../../../calc/outline/shape.ts';
import { moved, transformed, turned } from '../../../calc/outline/transform.ts';
import { withDarts } from '../../../calc/piece/cut-in.ts';
import { edgeTurns } from '../../../calc/piece/edge-turns.ts';
import type { Dart } from '../../../calc/piece/flat-piece.ts';
import { type GiveWay, placeDarts } from '../../../calc/piece/place-darts.ts';
import { placeNear, pointAt, rimOf } from '../../../calc/piece/rim.ts';
import { expectWithin, valueOf } from '../outcomes.ts';
import { convexShape, ell, star } from '../outline/shapes.ts';

const overhang = { reach: 0.0384, landing: 0.025 };
const shape = { reach: overhang.reach, keepOff: 0.005, gap: 0.005, narrowest: 0.005 };
const habit = { shear: 0.3, widest: 0.02, keepOff: shape.keepOff, least: 0.002 };

function dartedOn(
  outline: Contour,
  more: Partial<DartHabit> = {},
  give: GiveWay = {},
): { rim: Contour; darts: readonly Dart[]; wanted: number } {
  const rim = [...valueOf(offsetContour(outline, overhang.reach))].sort((a, b) => contourArea(b) - contourArea(a))[0]!;
  const stretches = edgeTurns(outline);
  const bends = valueOf(dartNeeds(stretches, overhang, { ...habit, ...more }));
  const { darts, slits } = dartTotal(bends);
  return { rim, darts: placeDarts(outline, rim, stretches, bends, shape, give), wanted: darts + slits };
}

const contour = (s: Shape): Contour => valueOf(contourOf(s));
const round = (s: Shape) => dartedOn(contour(s));

/** Area that a dart takes out: the triangle of its legs and what bulges between its chord and the rim. */
function takenOut(rim: Contour, { mouth, tip, width }: Dart): number {
  const edge = rimOf(rim);
  const at = placeNear(edge, mouth).place;
  const steps = 400;
  const line = Array.from({ length: steps + 1 }, (_, i) => pointAt(edge, at - width / 2 + (i / steps) * width));
  return contourArea([...line, tip]);
}

describe('darts on an outline', () => {
  it('sit at the four roundings of a deck, four each, evenly by turn', () => {
    const { darts } = round({ kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 });
    expect(darts).toHaveLength(16);
    const angles = darts
      .filter(({ mouth }) => mouth.x > 0.45 && mouth.y > 0.07)
      .map(({ mouth }) => (Math.atan2(mouth.y - 0.07, mouth.x - 0.45) * 180) / Math.PI)
      .sort((a, b) => a - b);
    expect(angles.map((a) => a.toFixed(3))).toEqual(['11.250', '33.750', '56.250', '78.750']);
    for (const { depth, width } of darts) {
      expectWithin(depth, 0.0334, 1e-6);
      expectWithin(width, ((Math.PI / 2) * 0.0634 * 0.7) / 4, 1e-6);
    }
  });

  it('never come nearer to the face than they are kept off, and never run into each other', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), (s) => {
        const outline = contour(s);
        const { rim, darts, wanted } = dartedOn(outline);
        expect(darts).toHaveLength(wanted);
        const edge = rimOf(rim);
        for (const { tip } of darts) expect(contourDistance(outline, tip)).toBeGreaterThanOrEqual(shape.keepOff - 1e-9);
        const places = darts
          .map(({ mouth, width }) => ({ at: placeNear(edge, mouth).place, half: width / 2 }))
          .sort((a, b) => a.at - b.at);
        places.forEach((one, i) => {
          const next = places[(i + 1) % places.length]!;
          if (places.length < 2) return;
          const apart = i + 1 < places.length ? next.at - one.at : next.at + edge.length - one.at;
          expect(apart).toBeGreaterThanOrEqual(one.half + next.half - 1e-7);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('take out of the piece what lies between their legs, and nothing else', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), (s) => {
        const { rim, darts } = round(s);
        const cut = withDarts(rim, darts);
        const out = darts.reduce((sum, dart) => sum + takenOut(rim, dart), 0);
        expect(Math.abs(contourArea(rim) - contourArea(cut) - out)).toBeLessThan(1e-6 * contourArea(rim) + 1e-8);
      }),
      { numRuns: 100 },
    );
  });

  it('turn and move with the outline', () => {
    fc.assert(
      fc.property(convexShape, fc.double({ min: -3, max: 3, noNaN: true }), (s, angle) => {
        const here = dartedOn(contour(s));
        const there = dartedOn(transformed(transformed(contour(s), turned(angle)), moved(0.3, -0.2)));
        expect(there.darts).toHaveLength(here.darts.length);
        // a rim that the library has trimmed lies on a grid of 0.1 um: a square millimetre at most
        const [then, now] = [there, here].map(({ rim, darts }) => areaOf([withDarts(rim, darts)]));
        expect(Math.abs((then as number) - (now as number))).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('open an inside corner by slits that end before it, and lap where a V would be too narrow', () => {
    const { darts } = round(ell);
    const slits = darts.filter(({ kind }) => kind === 'slit');
    expect(slits).toHaveLength(4);
    for (const { opens, mouth, depth } of slits) {
      expect(opens).toBeGreaterThan(0);
      expect(Math.hypot(mouth.x - 0.4, mouth.y - 0.4)).toBeLessThan(0.07);
      expect(depth).toBeGreaterThan(0.033);
    }
    const gentle = round({
      kind: 'polygon',
      points: [
        { x: 0, y: 0 },
        { x: 1, y: -0.05 },
        { x: 2, y: 0 },
        { x: 2, y: 1 },
        { x: 0, y: 1 },
      ],
    });
    expect(gentle.darts.find(({ mouth }) => Math.abs(mouth.x - 1) < 0.1 && mouth.y < 0)).toMatchObject({
      kind: 'slit',
      width: 0,
    });
  });
});

describe('a sharp corner, which turns at one point', () => {
  it('inwards has its one slit along its bisector, up to where both sides are as far off as darts are kept', () => {
    // an inside corner of 90 degrees at (0.4, 0.4): the rim has its own at 0.4 + reach
    const { darts } = dartedOn(contour(ell), { tongue: 0.01 });
    const slits = darts.filter(({ kind }) => kind === 'slit');
    expect(slits).toHaveLength(1);
    const { mouth, tip } = slits[0]!;
    for (const [p, off] of [
      [mouth, overhang.reach],
      [tip, shape.keepOff],
    ] as const) {
      expect(p.x - 0.4).toBeCloseTo(off, 6);
      expect(p.y - 0.4).toBeCloseTo(off, 6);
    }
  });

  it('keeps its dart: what should stay whole gives way, and so do the darts beside it', () => {
    // a lens whose tips turn at a point, between two arcs that have darts of their own
    const lens: Contour = [
      { x: 0.3, y: 0, bulge: Math.tan(Math.PI / 8) },
      { x: -0.3, y: 0, bulge: Math.tan(Math.PI / 8) },
    ];
    const free = dartedOn(lens, { tongue: 0.01 });
    const edge = rimOf(free.rim);
    const { place } = placeNear(edge, { x: 0.4, y: 0 });
    const blocked = [{ from: place - 0.004, to: place + 0.004 }];
    for (const { darts } of [free, dartedOn(lens, { tongue: 0.01 }, { blocked })]) {
      const tips = darts.filter(({ width, depth }) => width > depth);
      expect(tips).toHaveLength(2);
      for (const { mouth, tip } of tips) {
        expect(Math.abs(mouth.y)).toBeLessThan(1e-6);
        expect(Math.abs(tip.y)).toBeLessThan(1e-6);
        expect(Math.abs(tip.x)).toBeCloseTo(0.3 + shape.keepOff, 6);
      }
      expect(darts.length).toBeGreaterThan(4);
    }
  });
});

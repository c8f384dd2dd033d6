import { describe, expect, it } from 'vitest';
import { dartNeeds, dartTotal } from '../../../calc/cloth/darts.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import type { Shape } from '../../../calc/outline/shape.ts';
import { edgeTurns } from '../../../calc/piece/edge-turns.ts';
import { expectWithin, valueOf } from '../outcomes.ts';
import { ell, polygon } from '../outline/shapes.ts';

const overhang = { reach: 0.0384, landing: 0.025 };
const habit = { shear: 0.3, widest: 0.02, keepOff: 0.005, least: 0.002, tongue: 0.01 };
const bendsOf = (shape: Shape, more = {}) =>
  valueOf(dartNeeds(edgeTurns(valueOf(contourOf(shape))), overhang, { ...habit, ...more }));

/** A circle of 300 mm radius that was measured: every point is off by up to half a millimetre, in and out. */
const wavering: Shape = {
  kind: 'polygon',
  points: Array.from({ length: 180 }, (_, i) => {
    const r = 0.3 + (i % 2 === 0 ? 1 : -1) * 0.0002;
    const a = (2 * Math.PI * i) / 180;
    return { x: r * Math.cos(a), y: r * Math.sin(a) };
  }),
};

describe('bends of an outline as it is drawn', () => {
  it('a line that wavers is one bend, with as many darts as the clean one', () => {
    const clean = bendsOf({ kind: 'circle', diameter: 0.6 });
    const drawn = bendsOf(wavering);
    expect(drawn).toHaveLength(1);
    expect(dartTotal(drawn)).toEqual(dartTotal(clean));
    expectWithin(drawn[0]!.turn, 2 * Math.PI, 1e-9);
    // without the excess that lies flat every point would be a bend of its own
    expect(bendsOf(wavering, { least: 0 }).length).toBeGreaterThan(50);
  });

  it('a long arc is no sharp turn, however far it turns in all: the corner that it runs into is a bend by itself', () => {
    const halfDisc: Shape = {
      kind: 'contour',
      vertices: [
        { x: 0, y: -0.4, bulge: 1 },
        { x: 0, y: 0.4 },
      ],
    };
    const found = [...bendsOf(halfDisc)].sort((a, b) => a.turn - b.turn);
    expect(found.map(({ turn }) => turn.toFixed(6))).toEqual(
      [Math.PI / 2, Math.PI / 2, Math.PI].map((t) => t.toFixed(6)),
    );
    expect(found.map(({ darts }) => darts)).toEqual([1, 1, Math.ceil((Math.PI * 0.0634 * 0.7) / 0.02)]);
  });

  it('a sharp corner is one dart as wide as its excess, an inward one is one slit', () => {
    const corners = bendsOf({ kind: 'rectangle', length: 0.5, width: 0.3 });
    expect(corners.map(({ darts }) => darts)).toEqual([1, 1, 1, 1]);
    // a quarter turn times 63.4 mm, less 30 %
    expectWithin(corners[0]!.width, (Math.PI / 2) * 0.0634 * 0.7, 1e-9);
    expect(corners[0]!.widest).toBe(corners[0]!.width);
    expect(dartTotal(bendsOf(ell))).toEqual({ darts: 5, slits: 1 });
  });

  it('a sharp corner where a long curve begins is a bend by itself', () => {
    const arched = polygon(
      [0, 0],
      [1, 0],
      ...Array.from({ length: 41 }, (_, i) => [1 - i / 40, 0.3 + 0.1 * Math.sin((Math.PI * i) / 40)] as const),
    );
    const bends = bendsOf(arched);
    expect(bends.filter(({ length, darts }) => length < 0.03 && darts === 1)).toHaveLength(4);
    expectWithin(
      bends.reduce((sum, { turn }) => sum + turn, 0),
      2 * Math.PI,
      1e-9,
    );
  });

  it('a gentle bend whose excess is pressed flat has no dart', () => {
    const blunt = polygon([0, 0], [0.5, -0.005], [1, 0], [1, 0.5], [0, 0.5]);
    // 20 mrad times 63.4 mm, less 30 %: 0.9 mm
    const gentle = bendsOf(blunt).find(({ turn }) => turn < 0.1);
    expect(gentle).toMatchObject({ darts: 0, slits: 0 });
  });
});

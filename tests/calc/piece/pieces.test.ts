import { describe, expect, it } from 'vitest';
import { sheetArea } from '../../../calc/bag/bag.figure.ts';
import { layerPiece } from '../../../calc/cloth/area.figure.ts';
import { coreArea } from '../../../calc/core/core.figure.ts';
import { Bench, counters } from '../../../calc/figure/bench.ts';
import type { Layer, Recipe, StackItem } from '../../../calc/model/index.ts';
import { contourDistance } from '../../../calc/outline/contour-distance.ts';
import { contourArea, contourBox } from '../../../calc/outline/contour-measure.ts';
import { placedDarts } from '../../../calc/piece/darts.figure.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import { flatPieces, flatPiecesMissing, flatPiecesOf } from '../../../calc/piece/flat-pieces.figure.ts';
import { layerJoins } from '../../../calc/piece/joins.figure.ts';
import { seamsOnEachOther } from '../../../calc/piece/seams.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { amount, bookOf, deg, layer, mm, SLED, SLED_LAYERS } from '../../harness/sled-model.ts';
import { valueOf } from '../figures/ask.ts';

const sled = new Bench(SLED, bookOf());
const stacked = (
  items: readonly StackItem[],
  part: Partial<NonNullable<Recipe['part']>> = {},
  more: Partial<Recipe> = {},
) =>
  new Bench(
    {
      ...SLED,
      ...more,
      part: { ...SLED.part!, ...part },
      stack: { ...SLED.stack!, items },
    },
    bookOf(),
  );
const only = (bench: Bench, key: string): FlatPiece => {
  const pieces = valueOf(bench.ask(flatPiecesOf, key));
  expect(pieces).toHaveLength(1);
  return pieces[0]!;
};
const wrapped = (name: string, landing: number, more: Partial<Layer> = {}): Layer =>
  layer('ply', name, 'triax_680', `stack.${name}`, {
    angle: deg(0),
    extent: { kind: 'wrap', way: 'onto', target: 'body', landing: mm(landing) },
    darts: 'auto',
    ...more,
  });
const body = layer('core', 'body', 'foam_80', 'stack.body', { thickness: mm(20) });

describe('the pieces of a sled deck', () => {
  it('come in the order in which they are laid, and nothing is missing', () => {
    expect(valueOf(sled.ask(flatPieces)).map(({ name }) => name)).toEqual([
      'outer',
      'keel',
      'body',
      'bolts',
      'pad',
      'inner',
      'peel',
      'mesh',
      'bag',
    ]);
    expect(valueOf(sled.ask(flatPiecesMissing))).toEqual([]);
  });

  it('have the area that the cost is reckoned with, less the darts', () => {
    for (const laid of ['outer', 'keel', 'bolts', 'pad', 'inner']) {
      const piece = only(sled, laid);
      const reckoned = valueOf(sled.ask(layerPiece, laid));
      expect(Math.abs(piece.area + (piece.darted ?? 0) - reckoned.area), laid).toBeLessThan(1e-6 * reckoned.area);
      expect(piece.length, laid).toBeCloseTo(reckoned.length, 9);
      expect(piece.width, laid).toBeCloseTo(reckoned.width, 9);
    }
    expect(only(sled, 'body').area).toBeCloseTo(valueOf(sled.ask(coreArea, 'body')), 9);
    const sheets = valueOf(sled.ask(flatPieces)).filter(({ kind }) => kind === 'peel' || kind === 'mesh');
    for (const { area, path } of sheets) expect(area).toBeCloseTo(valueOf(sled.ask(sheetArea, path)), 9);
  });

  it('the outer ply has sixteen darts, a tab over the straight of its heel, four notches and its fold line', () => {
    const outer = only(sled, 'outer');
    expect(outer.darts).toHaveLength(16);
    expect(outer.marks.map(({ kind }) => kind).sort()).toEqual(['fold', 'notch', 'notch', 'notch', 'notch']);
    const [low, high] = contourBox(outer.cut);
    // 60 mm of tab at the heel; the straight there is 420 mm less two corners of 140 mm
    expect(-low.x - high.x).toBeCloseTo(0.06, 9);
    expect(outer.cut.filter(({ x }) => Math.abs(x - low.x) < 1e-9).map(({ y }) => Math.abs(y))).toEqual([
      expect.closeTo(0.07, 9),
      expect.closeTo(0.07, 9),
    ]);
    expect(outer).toMatchObject({
      faceUp: true,
      mayTurn: true,
      mayMirror: false,
      count: 1,
      material: 'triax_680',
      grain: 0,
    });
    expect(contourArea(outer.cut)).toBeCloseTo(outer.area, 12);
  });

  it('the inner ply lies with its other face up, the pad at 45 degrees', () => {
    expect(only(sled, 'inner').faceUp).toBe(false);
    // stitched +45/-45 turned over lies as before; a 0/45/-45 does not
    expect(only(sled, 'pad')).toMatchObject({ grain: expect.closeTo(Math.PI / 4, 12), mayMirror: true });
  });

  it('the core has its insert cut out, its groove drawn and its holes off every edge', () => {
    const core = only(sled, 'body');
    expect(core.holes).toHaveLength(1);
    expect(contourArea(core.holes[0]!)).toBeCloseTo(-0.11 * 0.08, 12);
    const groove = core.marks.find(({ kind }) => kind === 'groove');
    // half a millimetre of room all round
    expect(contourArea(groove!.line)).toBeCloseTo(0.621 * 0.061, 9);
    expect(groove!.name).toBe('keel');
    expect(core.drills.length).toBeGreaterThan(150);
    for (const { at, diameter } of core.drills) {
      expect(diameter).toBe(0.002);
      expect(contourDistance(core.cut, at)).toBeLessThanOrEqual(-0.005 + 1e-9);
      expect(Math.abs(contourDistance(core.holes[0]!, at))).toBeGreaterThanOrEqual(0.005 - 1e-9);
      for (const place of [at.x, at.y]) expect(Math.abs(place / 0.05 - Math.round(place / 0.05))).toBeLessThan(1e-9);
    }
  });

  it('a handed part has each hand by itself, mirrored, angles too', () => {
    const bench = new Bench({ ...SLED, handed: ['port', 'starboard'] }, bookOf());
    const pieces = valueOf(bench.ask(flatPieces));
    expect(pieces).toHaveLength(18);
    const [port, starboard] = ['pad port', 'pad starboard'].map((name) => pieces.find((piece) => piece.name === name)!);
    expect(port!.grain).toBeCloseTo(Math.PI / 4, 12);
    expect(starboard!.grain).toBeCloseTo(-Math.PI / 4, 12);
    for (const { cut, area, holes } of pieces) {
      const all = holes.reduce((sum, hole) => sum + contourArea(hole), contourArea(cut));
      expect(all).toBeCloseTo(area, 12);
    }
  });
});

describe('plies that are wrapped one after the other', () => {
  const bench = stacked([wrapped('a', 25), wrapped('b', 50), wrapped('c', 75), body]);

  it('have their darts beside each other', () => {
    const [a, b, c] = ['a', 'b', 'c'].map((key) => valueOf(bench.ask(placedDarts, key)));
    expect(a!.length).toBeGreaterThan(10);
    expect(seamsOnEachOther(b!, a!, 0.01)).toEqual([]);
    expect(seamsOnEachOther(c!, b!, 0.01)).toEqual([]);
  });

  it('are computed again only where they changed', () => {
    const first = { ...SLED, stack: { ...SLED.stack!, items: [wrapped('a', 25), wrapped('b', 50), body] } };
    const on = new Bench(first, bookOf());
    on.ask(flatPieces);
    const before = counters.computed;
    on.ask(flatPieces);
    on.ask(placedDarts, 'b');
    expect(counters.computed).toBe(before);
  });
});

describe('a rectangle', () => {
  const rectangle = { kind: 'rectangle', length: 0.5, width: 0.3 } as const;

  it('has one dart at each corner and a tab between two of them', () => {
    const bench = stacked([wrapped('a', 25, { tabs: [{ length: mm(60), end: 'heel' }] }), body], {
      outline: rectangle,
      zones: [],
    });
    const piece = only(bench, 'a');
    expect(piece.darts).toHaveLength(4);
    for (const { mouth, tip } of piece.darts) {
      expect(Math.hypot(Math.abs(mouth.x) - 0.25, Math.abs(mouth.y) - 0.15)).toBeCloseTo(
        piece.darts[0]!.depth + 0.005,
        6,
      );
      expect(Math.abs(tip.x) - 0.25).toBeCloseTo(Math.abs(tip.y) - 0.15, 6);
    }
    const reckoned = valueOf(bench.ask(layerPiece, 'a'));
    expect(piece.area + (piece.darted ?? 0)).toBeCloseTo(reckoned.area, 9);
  });
});

describe('plies wider than their roll', () => {
  const wide = { kind: 'rectangle', length: 3, width: 2 } as const;
  const ply = (name: string, more: Partial<Layer> = {}) =>
    layer('ply', name, 'triax_680', `stack.${name}`, { angle: deg(0), extent: { kind: 'net', typed: true }, ...more });
  const bench = stacked([ply('a'), ply('b'), ply('c', { angle: deg(45) })], { outline: wide, zones: [] });

  it('are cut in lanes that overlap, off the joins of the ply below', () => {
    const [a, b] = ['a', 'b'].map((key) => valueOf(bench.ask(layerJoins, key))!);
    expect(a!.at).toEqual([expect.closeTo(0, 9)]);
    expect(Math.abs(b!.at[0]!)).toBeGreaterThanOrEqual(0.025 - 1e-9);
    const lanes = valueOf(bench.ask(flatPiecesOf, 'a'));
    expect(lanes.map(({ name }) => name)).toEqual(['a 1/2', 'a 2/2']);
    // two lanes of 1012.5 mm: 2 m and 25 mm of lap
    for (const { width, area } of lanes) {
      expect(width).toBeCloseTo(1.0125, 9);
      expect(area).toBeCloseTo(3 * 1.0125, 9);
    }
    expect(valueOf(bench.ask(layerPiece, 'a'))).toMatchObject({
      laps: expect.closeTo(0.075, 9),
      lanes: { lanes: 2, joins: 1 },
    });
  });

  it('at 45 degrees lie along it, and none is wider than the roll', () => {
    const lanes = valueOf(bench.ask(flatPiecesOf, 'c'));
    // 3.536 m across, in lanes of 1.27 m that lap by 25 mm
    expect(lanes).toHaveLength(3);
    for (const { cut, lane } of lanes) {
      const across = cut.map(({ x, y }) => (y - x) / Math.SQRT2);
      expect(Math.max(...across) - Math.min(...across)).toBeLessThanOrEqual(1.27 + 1e-9);
      expect(lane?.lap).toBe(0.025);
    }
    const all = lanes.reduce((sum, { area }) => sum + area, 0);
    expect(all).toBeCloseTo(valueOf(bench.ask(layerPiece, 'c')).area, 9);
  });

  it('keep a typed join, and copies move it on by their stagger', () => {
    const place = { x: { offset: mm(0) }, y: { offset: mm(100) } };
    const joined = stacked([ply('a', { joins: [{ kind: 'lap', lap: mm(50), at: place }] })], {
      outline: wide,
      zones: [],
    });
    expect(valueOf(joined.ask(layerJoins, 'a'))).toMatchObject({ at: [expect.closeTo(0.1, 9)], lap: 0.05 });
    const copies = stacked(
      [
        {
          kind: 'repeat',
          path: 'stack.0',
          times: 3,
          stagger: amount(0.06, LENGTH),
          items: [ply('a')],
        },
      ],
      { outline: wide, zones: [] },
    );
    const at = ['a.1', 'a.2', 'a.3'].map((key) => valueOf(copies.ask(layerJoins, key))!.at[0]!);
    expect(at[1]! - at[0]!).toBeCloseTo(0.06, 2);
    expect(at[2]! - at[0]!).toBeCloseTo(0.12, 2);
  });
});

describe('copies that drop', () => {
  it('are shorter at their end by true area', () => {
    const ply = layer('ply', 'a', 'triax_680', 'stack.0.0', {
      angle: deg(0),
      extent: { kind: 'net', typed: true },
      drop: { by: mm(120), end: 'nose' },
    });
    const bench = stacked([{ kind: 'repeat', path: 'stack.0', times: 2, items: [ply] }]);
    const [whole, shorter] = ['a.1', 'a.2'].map((key) => only(bench, key));
    expect(whole!.length - shorter!.length).toBeCloseTo(0.12, 9);
    expect(shorter!.area).toBeCloseTo(valueOf(bench.ask(layerPiece, 'a.2')).area, 9);
    // the rounded end of 120 mm: 0.12 x 0.42 less what the two roundings of 140 mm lack there
    const lacks = 2 * (0.14 * 0.12 - segmentUnder(0.14, 0.12));
    expect(whole!.area - shorter!.area).toBeCloseTo(0.12 * 0.42 - lacks, 9);
  });
});

/** Area under a quarter circle of radius r from its end inwards by d: the height is sqrt(r^2 - (r - x)^2). */
function segmentUnder(r: number, d: number): number {
  const u = r - d;
  return (r * r * Math.acos(u / r) - u * Math.sqrt(r * r - u * u)) / 2;
}

describe('layers of the whole sample', () => {
  it('have a piece each, but for coats', () => {
    expect(SLED_LAYERS.every(({ name }) => valueOf(sled.ask(flatPiecesOf, name)).length > 0)).toBe(true);
  });
});

describe('a core that is laid in two pieces', () => {
  const half = (name: string, x: number): Layer =>
    layer('core', name, 'foam_80', `stack.${name}`, {
      thickness: mm(20),
      extent: {
        kind: 'shape',
        shape: { kind: 'rectangle', length: 0.4, width: 0.3 },
        centre: { x: { offset: mm(x) }, y: { offset: mm(0) } },
      },
    });
  const pad = layer('insert', 'pad', 'birch_ply', 'stack.pad', {
    thickness: mm(20),
    extent: {
      kind: 'shape',
      shape: { kind: 'rectangle', length: 0.1, width: 0.06 },
      centre: { x: { offset: mm(-200) }, y: { offset: mm(0) } },
    },
  });
  it('has its insert cut out where it stands, and only there', () => {
    const bench = stacked([wrapped('outer', 25), half('left', -200), half('right', 200), pad, wrapped('inner', 25)]);
    const [left, right] = [only(bench, 'left'), only(bench, 'right')];
    expect(left.holes.map((hole) => contourArea(hole))).toEqual([expect.closeTo(-0.1 * 0.06, 12)]);
    expect(right.holes).toEqual([]);
    expect(right.marks.filter(({ kind }) => kind === 'cutout' || kind === 'insert' || kind === 'pocket')).toEqual([]);
  });
});

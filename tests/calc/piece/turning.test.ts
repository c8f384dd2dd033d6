/** Pieces that are turned, turned over or cut for the other hand, reckoned by hand: where each of their fibres then lies. */
import { describe, expect, it } from 'vitest';
import { drawingOfPiece, onRoll, pieceItems } from '../../../calc/drawing/of-piece.ts';
import { Bench } from '../../../calc/figure/bench.ts';
import type { Cloth, Layer, Outline } from '../../../calc/model/index.ts';
import { sameTurnedOver } from '../../../calc/piece/cloth.figure.ts';
import { placedDarts } from '../../../calc/piece/darts.figure.ts';
import { flatPieces } from '../../../calc/piece/flat-pieces.figure.ts';
import { layerJoins } from '../../../calc/piece/joins.figure.ts';
import { bookOf, deg, gsm, layer, mm, SLED } from '../../harness/sled-model.ts';
import { valueOf } from '../figures/ask.ts';
import { polygon } from '../outline/shapes.ts';

const round = (value: number) => Number(value.toFixed(9)) + 0;
const corners = (points: readonly { readonly x: number; readonly y: number }[]) =>
  points.map(({ x, y }) => `${round(x)} ${round(y)}`).sort();
const degrees = (angle: number) => round((angle * 180) / Math.PI);

/** No axis of it is one of symmetry; the middle of its box is that of the part. */
const skew = polygon([-0.5, -0.2], [0.5, -0.2], [0.5, 0.2], [-0.5, 0]);
const stacked = (items: readonly Layer[], outline: Outline, hands?: readonly string[]) =>
  new Bench(
    {
      ...SLED,
      ...(hands === undefined ? {} : { handed: hands }),
      part: { ...SLED.part!, outline, zones: [] },
      stack: { ...SLED.stack!, items },
    },
    bookOf(),
  );
const skin = (more: Partial<Layer>) =>
  layer('ply', 'skin', 'triax_680', 'stack.0', { extent: { kind: 'net', typed: true }, angle: deg(30), ...more });
const cutOf = (items: ReturnType<typeof pieceItems>) =>
  corners(items.flatMap((item) => (item.kind === 'line' && item.layer === 'cut' ? item.points : [])));
const warpOf = (items: ReturnType<typeof pieceItems>) => {
  const arrow = items.find(({ kind }) => kind === 'arrow');
  if (arrow?.kind !== 'arrow') throw new Error('there is no arrow');
  return degrees(Math.atan2(arrow.to.y - arrow.from.y, arrow.to.x - arrow.from.x));
};

describe('a skew ply at 30 degrees', () => {
  it('is cut as it lies in the mould where the upper side of its roll stays up', () => {
    const [piece] = valueOf(stacked([skin({})], skew).ask(flatPieces));
    const { items } = drawingOfPiece(piece!, ['skin']);
    expect(cutOf(items)).toEqual(corners(skew.points));
    expect(warpOf(items)).toBe(30);
  });

  it('is cut as its mirror image where it is laid with that side down: turned over, both lie right', () => {
    const [piece] = valueOf(stacked([skin({ turnedOver: true })], skew).ask(flatPieces));
    const { items } = drawingOfPiece(piece!, ['skin']);
    expect(cutOf(items)).toEqual(corners(skew.points.map(({ x, y }) => ({ x, y: -y }))));
    // on the table its warp runs at -30; about x it is turned over to 30, and its +45 comes to lie at 30 - 45
    expect(warpOf(items)).toBe(-30);
  });

  it('is mirrored for the other hand, its warp too, and both stay with the same face up', () => {
    const bench = stacked([skin({})], skew, ['port', 'starboard']);
    const pieces = valueOf(bench.ask(flatPieces));
    const [port, starboard] = ['skin port', 'skin starboard'].map((name) => pieces.find((each) => each.name === name));
    expect(corners(port!.cut)).toEqual(corners(skew.points));
    expect(corners(starboard!.cut)).toEqual(corners(skew.points.map(({ x, y }) => ({ x, y: -y }))));
    expect([port, starboard].map((piece) => degrees(piece!.grain!))).toEqual([30, -30]);
    expect([port, starboard].map((piece) => piece!.faceUp)).toEqual([true, true]);
    expect([port!.mayMirror, starboard!.mayMirror]).toEqual([false, false]);
  });

  it('lies on the roll with its warp along it, and turned by 180 degrees with the same warp', () => {
    const [piece] = valueOf(stacked([skin({})], skew).ask(flatPieces));
    expect(piece!.mayTurn).toBe(true);
    const [lying, turned] = [false, true].map((half) => pieceItems(piece!, ['skin'], onRoll(piece!, half)));
    // 30 degrees back: the corner at (0.5, -0.2) comes to 0.5 cos 30 - 0.2 sin 30, -0.5 sin 30 - 0.2 cos 30
    const [x, y] = [(Math.sqrt(3) * 0.5 - 0.2) / 2, (-0.5 - Math.sqrt(3) * 0.2) / 2];
    expect(cutOf(lying!)).toContain(`${round(x)} ${round(y)}`);
    expect(cutOf(turned!)).toContain(`${round(-x)} ${round(-y)}`);
    for (const items of [lying!, turned!]) expect(Math.abs(warpOf(items)) % 180).toBe(0);
  });
});

describe('cloth that is turned over about its warp', () => {
  const cloth = (style: Cloth['style'], ...layers: readonly (readonly [angle: number, mass: number])[]): Cloth => ({
    style,
    layers: layers.map(([angle, mass]) => ({ angle: deg(angle), arealWeight: gsm(mass) })),
  });
  // the order of the layers is turned round, and each angle changes its sign
  it.each([
    ['one way', cloth('uni', [0, 300]), true],
    ['woven 0/90', cloth('woven', [0, 150], [90, 150]), true],
    ['stitched +45/-45', cloth('stitched', [45, 220], [-45, 220]), true],
    ['stitched +45/-45, one heavier', cloth('stitched', [45, 300], [-45, 150]), false],
    ['stitched 0/90', cloth('stitched', [0, 300], [90, 300]), false],
    ['stitched 0/+45/-45', cloth('stitched', [0, 280], [45, 200], [-45, 200]), false],
    ['stitched +45/0/-45', cloth('stitched', [45, 200], [0, 280], [-45, 200]), true],
    ['stitched +45/90/-45/0', cloth('stitched', [45, 200], [90, 200], [-45, 200], [0, 200]), false],
  ] as const)('%s', (_, of, same) => {
    expect(sameTurnedOver(of)).toBe(same);
  });
});

describe('joins of a wrapped ply that is wider than its roll', () => {
  it('lie beside its darts, the lap too', () => {
    for (const landing of [20, 30, 40, 50]) {
      const ply = layer('ply', 'skin', 'triax_680', 'stack.0', {
        angle: deg(0),
        extent: { kind: 'wrap', way: 'onto', target: 'body', landing: mm(landing) },
        darts: 'auto',
      });
      const body = layer('core', 'body', 'foam_80', 'stack.body', { thickness: mm(20) });
      const bench = stacked([ply, body], { kind: 'ellipse', length: 2.6, width: 1.8 });
      const joins = valueOf(bench.ask(layerJoins, 'skin'))!;
      const darts = valueOf(bench.ask(placedDarts, 'skin'));
      expect(joins.at.length).toBeGreaterThan(0);
      expect(darts.length).toBeGreaterThan(10);
      // the warp runs along x: joins are lines of one y
      for (const at of joins.at)
        for (const { mouth, width } of darts)
          expect(Math.abs(mouth.y - at)).toBeGreaterThanOrEqual((width + joins.lap) / 2 - 1e-9);
    }
  });
});

/** Drawings of flat pieces: turned as they lie on table and roll, with their words inside. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arranged } from '../../../calc/drawing/arrange.ts';
import { boundsOf, outermostOf } from '../../../calc/drawing/bounds.ts';
import type { DrawnItem } from '../../../calc/drawing/drawing.ts';
import { movedItem, movedLine } from '../../../calc/drawing/move.ts';
import { drawingOfPiece, onRoll, pieceItems, roomOnRoll, sketchOfPiece } from '../../../calc/drawing/of-piece.ts';
import type { Contour } from '../../../calc/outline/contour.ts';
import { contourArea } from '../../../calc/outline/contour-measure.ts';
import { flattened } from '../../../calc/outline/flatten.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { allPieces, body, deck, keel, pad, piece, rounded } from '../../harness/flat-pieces.ts';

const cutsOf = (items: readonly DrawnItem[]): Contour[] =>
  items.flatMap((item) => (item.kind === 'line' && item.layer === 'cut' ? [item.points] : []));

/** Whether a point lies inside some closed lines: a ray to the right meets them an odd number of times. */
function inside({ x, y }: Point, contours: readonly Contour[]): boolean {
  let odd = false;
  for (const contour of contours) {
    const points = flattened(contour, 1e-5);
    points.forEach((a, i) => {
      const b = points[(i + 1) % points.length] as Point;
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)) odd = !odd;
    });
  }
  return odd;
}

const label = ['outer', 'triax_680, 2 of them', 'sled_deck, size short, revision 4'];

describe('the drawing of a piece', () => {
  it.each(allPieces)('of $name keeps its words and its arrow on the cloth, clear of its edge and its holes', (each) => {
    const items = pieceItems(each, label);
    const words = items.filter(({ layer }) => layer === 'text');
    expect(words.length).toBe(label.length + (each.grain === undefined ? 0 : 1));
    for (const item of words) for (const corner of outermostOf(item)) expect(inside(corner, cutsOf(items))).toBe(true);
  });

  it('sets the words of a narrow piece smaller, and of one too small below it', () => {
    const heightOf = (each: typeof keel): number =>
      Math.max(...pieceItems(each, label).flatMap((item) => (item.kind === 'text' ? [item.height] : [])));
    expect(heightOf(deck)).toBe(0.012);
    expect(heightOf(keel)).toBeLessThan(0.012);
    const scrap = piece('scrap', rounded(0.02, 0.02, 0.005));
    const { low } = boundsOf(pieceItems(scrap, label).filter(({ layer }) => layer === 'cut'));
    for (const item of pieceItems(scrap, label).filter(({ layer }) => layer === 'text'))
      for (const corner of outermostOf(item)) expect(corner.y).toBeLessThan(low.y);
  });

  it('puts a tall piece’s words upright', () => {
    const tall = piece('tall', rounded(0.06, 0.62, 0), { grain: Math.PI / 2 });
    const [text] = pieceItems(tall, label).filter(({ kind }) => kind === 'text');
    expect(text).toMatchObject({ angle: Math.PI / 2 });
  });

  it('mirrors a piece that is cut with its other face up, and says so', () => {
    const drawing = drawingOfPiece(pad, label);
    expect(drawing.seenFrom).toBe('tool side');
    expect(drawingOfPiece(deck, label).seenFrom).toBe('bag side');
    const [cut] = cutsOf(drawing.items);
    // The corner at (0.26, 0) stays, the one at (0.2, 0.18) comes to lie at (0.2, -0.18).
    expect(cut).toContainEqual(expect.objectContaining({ x: 0.2, y: -0.18 }));
    expect(contourArea(cut as Contour)).toBeCloseTo(pad.area, 12);
  });

  it('shows the way of the warp: 45 degrees, mirrored with the piece', () => {
    const arrow = drawingOfPiece(pad, label).items.find(({ kind }) => kind === 'arrow');
    if (arrow?.kind !== 'arrow') throw new Error('no arrow');
    const angle = Math.atan2(arrow.to.y - arrow.from.y, arrow.to.x - arrow.from.x);
    expect(angle).toBeCloseTo(-Math.PI / 4, 12);
  });

  it('has a sketch that fits its box and fills it one way', () => {
    for (const each of allPieces) {
      const { low, high, items } = sketchOfPiece(each, { length: 0.04, width: 0.02 });
      expect(Math.max((high.x - low.x) / 0.04, (high.y - low.y) / 0.02)).toBeCloseTo(1, 9);
      expect(items.some(({ kind }) => kind === 'text')).toBe(false);
    }
  });
});

describe('a move', () => {
  const angle = fc.double({ min: -7, max: 7, noNaN: true });
  const bulge = fc.double({ min: -1.5, max: 1.5, noNaN: true });
  const contour = fc.tuple(bulge, bulge, bulge, bulge).map(
    (bulges): Contour =>
      [
        { x: 0, y: 0 },
        { x: 2, y: 0.3 },
        { x: 1.7, y: 1.2 },
        { x: -0.2, y: 0.9 },
      ].map((point, i) => ({ ...point, bulge: bulges[i] ?? 0 })),
  );

  it('keeps areas, mirrored or not, and undoes itself', () => {
    fc.assert(
      fc.property(contour, angle, fc.boolean(), (line, turn, mirrored) => {
        const moved = movedLine({ turn, mirrored, by: { x: 3, y: -2 } }, line, true);
        expect(contourArea(moved)).toBeCloseTo(contourArea(line), 9);
        const back = movedLine(
          { mirrored, turn: mirrored ? turn : -turn },
          movedLine({ turn, mirrored }, line, true),
          true,
        );
        back.forEach(({ x, y }, i) => {
          expect(Math.hypot(x - (line[i]?.x ?? 9), y - (line[i]?.y ?? 9))).toBeLessThan(1e-12);
        });
      }),
    );
  });

  it('keeps the arcs of an open line where they were', () => {
    const open: Contour = [
      { x: 0, y: 0, bulge: 0.5 },
      { x: 1, y: 0 },
      { x: 2, y: 1 },
    ];
    const back = movedLine({ mirrored: true }, movedLine({ mirrored: true }, open, false), false);
    expect(back).toEqual(open);
    const item = movedItem({ mirrored: true }, { kind: 'line', layer: 'mark', points: open, closed: false });
    expect(boundsOf([item]).high.y).toBeCloseTo(
      -boundsOf([{ kind: 'line', layer: 'mark', points: open, closed: false }]).low.y,
    );
  });
});

describe('pieces side by side', () => {
  const toCut = (each: typeof deck, count: number) => ({ piece: each, label, count });

  it('lie with the warp along the roll, none over another, none past its edge', () => {
    const { drawing, length, tooWide, count } = arranged('roll', [toCut(deck, 3), toCut(pad, 5), toCut(keel, 4)], 1.27);
    expect(tooWide).toEqual([]);
    expect(count).toBe(12);
    const boxes = drawing.items
      .filter((item) => item.layer === 'cut' && item.kind === 'line' && contourArea(item.points) > 0)
      .map((item) => boundsOf([item]));
    expect(boxes).toHaveLength(12);
    for (const [i, a] of boxes.entries()) {
      expect(a.low.y).toBeGreaterThan(-1e-9);
      expect(a.high.y).toBeLessThan(1.27 + 1e-9);
      expect(a.high.x).toBeLessThan(length + 1e-9);
      for (const b of boxes.slice(i + 1)) {
        const apart = a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y;
        expect(apart).toBe(true);
      }
    }
    const arrows = drawing.items.flatMap((item) => (item.kind === 'arrow' ? [item] : []));
    expect(arrows).toHaveLength(12);
    for (const { from, to } of arrows) expect(to.y - from.y).toBeCloseTo(0, 12);
  });

  it('keep +45 and -45 apart: a piece is turned to its warp, never mirrored for it', () => {
    const plus = piece('plus', pad.cut, { grain: Math.PI / 4 });
    const minus = piece('minus', pad.cut, { grain: -Math.PI / 4 });
    for (const each of [plus, minus]) {
      const [cut] = cutsOf(pieceItems(each, label, onRoll(each)));
      const [a, b, c] = cut as Contour;
      if (a === undefined || b === undefined || c === undefined) throw new Error('no corners');
      expect((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)).toBeGreaterThan(0);
      expect(Math.atan2(b.y - a.y, b.x - a.x)).toBeCloseTo(-(each.grain ?? 0), 12);
    }
    expect(roomOnRoll(plus).along).not.toBeCloseTo(roomOnRoll(minus).along, 3);
  });

  it('name what is wider than the roll', () => {
    expect(arranged('roll', [toCut(deck, 1), toCut(pad, 1)], 0.3).tooWide).toEqual([deck]);
    expect(arranged('sheet', [toCut(body, 2)], undefined).length).toBeCloseTo(2 * 1.18 + 0.01, 12);
  });
});

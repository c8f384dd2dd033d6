/** SVG for cutters and screens, read back by libraries that did not write it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../calc/drawing/drawing.ts';
import { drawingOfPiece } from '../../../calc/drawing/of-piece.ts';
import { cutSvg, screenStyle, screenSvg } from '../../../language/export/svg.ts';
import { allPieces, body, deck, hostileName, piece, rounded } from '../../harness/flat-pieces.ts';
import { areaOfPath, boxOfPath, readSvg } from './read-back.ts';

const label = ['outer', 'triax_680, 2 of them'];
const within = (layer: string, file: string) => readSvg(file).filter((each) => each.within.includes(layer));

describe('SVG for a cutter', () => {
  it.each(allPieces)('has the area of $name to a millionth, and its size in millimetres', (each) => {
    const paths = within('cut', cutSvg(drawingOfPiece(each, label))).map(({ attributes }) => attributes.d ?? '');
    expect(paths).toHaveLength(1 + each.holes.length);
    const [outer = 0, ...holes] = paths.map(areaOfPath);
    const area = holes.reduce((sum, hole) => sum - hole, outer);
    expect(Math.abs(area / (each.area * 1e6) - 1)).toBeLessThan(1e-6);
    const { width, height } = boxOfPath(paths[0] ?? '');
    expect(width).toBeCloseTo(each.length * 1000, 3);
    expect(height).toBeCloseTo(each.width * 1000, 3);
  });

  it('is 1:1: a unit is a millimetre, on paper as in the numbers', () => {
    const [svg] = readSvg(cutSvg(drawingOfPiece(deck, label)));
    const { width, height, viewBox } = svg?.attributes ?? {};
    expect(viewBox).toBe(`0 0 ${width?.replace('mm', '')} ${height?.replace('mm', '')}`);
    expect(width).toBe('1190mm');
    expect(height).toBe('430mm');
  });

  it('has a group a layer with id and label, and arcs as arcs', () => {
    const file = cutSvg(drawingOfPiece(body, label));
    const groups = readSvg(file).filter(({ name }) => name === 'g');
    expect(groups.map(({ attributes }) => [attributes.id, attributes['inkscape:label']])).toEqual(
      ['cut', 'mark', 'drill', 'text'].map((layer) => [layer, layer]),
    );
    const [cut] = within('cut', file);
    expect(cut?.attributes.d?.match(/A140 140 0 0 0 /g)).toHaveLength(4);
    expect(cut?.attributes.d).not.toMatch(/[CQ]/);
    const drills = within('drill', file);
    expect(drills).toHaveLength(100);
    expect(drills.every(({ name, attributes }) => name === 'circle' && attributes.r === '1')).toBe(true);
  });

  it('is the same on every run', () => {
    for (const each of allPieces) expect(cutSvg(drawingOfPiece(each, label))).toBe(cutSvg(drawingOfPiece(each, label)));
  });

  it('takes names as words, whatever they hold', () => {
    for (const write of [cutSvg, screenSvg]) {
      const evil = piece(hostileName, rounded(1, 0.4, 0.1), { path: hostileName });
      const read = readSvg(write(drawingOfPiece(evil, [hostileName])));
      expect(read.map(({ name }) => name).filter((name) => name === 'script')).toEqual([]);
      const words = read.find(({ name }) => name === 'text')?.text ?? '';
      expect(words).toContain('a<script>&"\'');
      expect(words).toContain('é日');
      expect(words).not.toMatch(/[\u0000-\u001f\u202e]/);
    }
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        const drawing = drawingOfPiece(piece(words, rounded(1, 0.4, 0.1)), [words]);
        expect(() => readSvg(cutSvg(drawing))).not.toThrow();
        expect(() => readSvg(screenSvg(drawing))).not.toThrow();
      }),
    );
  });

  it('writes no number that is none', () => {
    for (const x of [Number.NaN, Number.POSITIVE_INFINITY, 1e12]) {
      const broken: Drawing = {
        ...drawingOfPiece(deck, label),
        items: [{ kind: 'circle', layer: 'cut', centre: { x, y: 0 }, radius: 1 }],
      };
      expect(() => cutSvg(broken)).toThrow('cannot be drawn');
    }
    expect(cutSvg(drawingOfPiece(deck, label))).not.toMatch(/NaN|Infinity|undefined|-0[^.\d]|\de[+-]?\d/);
  });
});

describe('SVG for a screen', () => {
  const drawing: Drawing = {
    title: 'plan',
    seenFrom: 'bag side',
    low: { x: 0, y: 0 },
    high: { x: 1, y: 0.4 },
    items: [
      {
        kind: 'line',
        layer: 'cloth',
        points: rounded(1, 0.4, 0.1),
        closed: true,
        hatch: Math.PI / 4,
        source: { path: 'stack.0', name: 'outer' },
      },
      {
        kind: 'line',
        layer: 'process',
        points: [
          { x: 0, y: 0 },
          { x: 1, y: 0 },
        ],
        closed: false,
        dashed: true,
      },
      { kind: 'arrow', layer: 'dimension', from: { x: 0, y: 0 }, to: { x: 1, y: 0 }, heads: 'both' },
    ],
  };

  it('says what stands behind a shape, in classes and data, and leaves colours to the theme', () => {
    const file = screenSvg(drawing, { prefix: 'p1' });
    const shapes = readSvg(file).filter(({ attributes }) => attributes['data-name'] === 'outer');
    expect(shapes.map(({ attributes }) => attributes.class)).toEqual(['shape closed', 'hatched']);
    expect(shapes.every(({ attributes }) => attributes['data-path'] === 'stack.0')).toBe(true);
    expect(file).not.toMatch(/style=|<style|#[0-9a-f]{3,6}"/);
    // A fibre to the left and up at 45 degrees is turned by -45 where y points down.
    expect(file).toContain('<pattern id="p1-hatch-135"');
    expect(file).toContain('rotate(135)');
    expect(file).toContain('url(#p1-hatch-135)');
  });

  it('carries its own colours as a file, each a variable that a theme may set', () => {
    const file = screenSvg(drawing, { styled: true, marked: true });
    expect(readSvg(file).find(({ name }) => name === 'style')?.text).toBe(screenStyle);
    const colours = [...screenStyle.matchAll(/(?:stroke|fill):([^;}]*)/g)].map(([, colour]) => colour);
    expect(colours.filter((colour) => colour !== 'none' && !colour?.startsWith('var(--laybook-'))).toEqual([]);
  });
});

/** DXF of release 12, read back by a library that did not write it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawingLayers } from '../../../calc/drawing/layers.ts';
import { drawingOfPiece } from '../../../calc/drawing/of-piece.ts';
import { dxf, dxfLayer, dxfText } from '../../../language/export/dxf.ts';
import { allPieces, body, deck, hostileName, piece, rounded } from '../../harness/flat-pieces.ts';
import { areaOfPolyline, readDxf } from './read-back.ts';

const label = ['outer', 'triax_680, 2 of them'];

describe('DXF', () => {
  it.each(allPieces)('has the area of $name to a millionth, in millimetres from its lower left corner', (each) => {
    const { entities } = readDxf(dxf(drawingOfPiece(each, label)));
    const cuts = entities.filter(({ layer, type }) => layer === 'CUT' && type === 'POLYLINE');
    expect(cuts).toHaveLength(1 + each.holes.length);
    expect(cuts.every(({ shape }) => shape === true)).toBe(true);
    const area = cuts.reduce((sum, { vertices = [] }) => sum + areaOfPolyline(vertices), 0);
    expect(Math.abs(area / (each.area * 1e6) - 1)).toBeLessThan(1e-6);
    const points = cuts.flatMap(({ vertices = [] }) => vertices);
    expect(Math.min(...points.map(({ x }) => x))).toBeGreaterThan(-1e-6);
    expect(Math.min(...points.map(({ y }) => y))).toBeGreaterThan(-1e-6);
  });

  it('says that it is of release 12, metric, in millimetres', () => {
    const { header } = readDxf(dxf(drawingOfPiece(deck, label)));
    expect(header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4, $MEASUREMENT: 1 });
  });

  it('closes by its flag and turns corners by bulges', () => {
    const { entities } = readDxf(dxf(drawingOfPiece(body, label)));
    const [cut] = entities.filter(({ layer }) => layer === 'CUT');
    expect(cut?.vertices).toHaveLength(8);
    expect(cut?.vertices?.filter(({ bulge }) => bulge)).toHaveLength(4);
    const drills = entities.filter(({ layer }) => layer === 'DRILL');
    expect(drills).toHaveLength(100);
    expect(drills.every(({ type, radius }) => type === 'CIRCLE' && radius === 1)).toBe(true);
  });

  it('uses only what release 12 knows, on layers that it declares, with names that it takes', () => {
    const { entities, tables } = readDxf(dxf(drawingOfPiece(deck, label)));
    const kinds = new Set(entities.map(({ type }) => type));
    expect([...kinds].sort()).toEqual(['LINE', 'POLYLINE', 'TEXT']);
    const declared = Object.keys(tables.layer?.layers ?? {});
    expect(declared).toEqual(['CUT', 'MARK', 'TEXT']);
    expect(entities.filter(({ layer }) => !declared.includes(layer))).toEqual([]);
    for (const layer of drawingLayers) expect(dxfLayer(layer)).toMatch(/^[A-Z0-9_$-]{1,31}$/);
  });

  it('is plain ASCII, two lines a group, the same on every run', () => {
    const file = dxf(drawingOfPiece(deck, label));
    expect(file).toMatch(/^[\x20-\x7e\r\n]*$/);
    const lines = file.split('\r\n');
    expect(lines.pop()).toBe('');
    expect(lines.length % 2).toBe(0);
    expect(lines.filter((_, i) => i % 2 === 0).every((code) => /^ *\d{1,3}$/.test(code))).toBe(true);
    expect(dxf(drawingOfPiece(deck, label))).toBe(file);
  });

  it('takes names as words, whatever they hold', () => {
    const { entities } = readDxf(dxf(drawingOfPiece(piece('x', rounded(1, 0.4, 0.1)), [hostileName])));
    const texts = entities.filter(({ type }) => type === 'TEXT');
    expect(texts).toHaveLength(1);
    expect(texts[0]?.text).toContain('EOF');
    expect(dxfText('Ørsted naïve 45° 100 % %%u \\U+0041 ^J 日')).toBe('Orsted naive 45deg 100 % %u /U+0041 J \\U+65E5');
    const whole = readDxf(dxf(drawingOfPiece(piece('x', rounded(1, 0.4, 0.1)), ['x']))).entities.length;
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        const file = dxf(drawingOfPiece(piece(words, rounded(1, 0.4, 0.1)), [words]));
        expect(file).toMatch(/^[\x20-\x7e\r\n]*$/);
        expect(readDxf(file).entities).toHaveLength(whole);
      }),
    );
  });
});

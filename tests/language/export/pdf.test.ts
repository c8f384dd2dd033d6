/** PDF files, read back and painted by a library that did not write them. The pages land in tests/out/pdf: look at them. */
import { describe, expect, it } from 'vitest';
import { arranged } from '../../../calc/drawing/arrange.ts';
import type { Drawing } from '../../../calc/drawing/drawing.ts';
import { drawingOfPiece } from '../../../calc/drawing/of-piece.ts';
import { newPdf, pt } from '../../../language/export/pdf/document.ts';
import { drawingPdf, mostPages, tiledPages, tiledPdf } from '../../../language/export/pdf/index.ts';
import { usualScale } from '../../../language/export/pdf/one-page.ts';
import { tileName, tiling } from '../../../language/export/pdf/tiles.ts';
import { spelled } from '../../../language/export/pdf/words.ts';
import { body, deck, hostileName, keel, pad, piece, rounded } from '../../harness/flat-pieces.ts';
import { type PdfPage, readPdf } from './read-pdf.ts';

const label = ['outer', 'triax_680, cut 2', 'sled_deck, revision 4', '1180 mm by 420 mm'];
const drawing: Drawing = { ...drawingOfPiece(deck, label), title: 'sled_deck: outer' };

/** 100 mm in points: 72 to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3). */
const hundred = (100 * 72) / 25.4;

/** Level strokes of 100 mm: the base of the bar. */
const bars = ({ lines }: PdfPage) =>
  lines.filter(({ from, to }) => from[1] === to[1] && Math.abs(Math.abs(to[0] - from[0]) - hundred) < 1e-3);

/** Points where the strokes of registration crosses (8 mm) have their middle. */
const crosses = ({ lines }: PdfPage): (readonly [number, number])[] =>
  lines
    .filter(({ from, to }) => from[1] === to[1] && Math.abs(Math.abs(to[0] - from[0]) - pt(8)) < 1e-3)
    .map(({ from, to }) => [(from[0] + to[0]) / 2, from[1]]);

describe('a piece on pages', () => {
  it('has an overview and the pages that it names, each with a bar of 100 mm', async () => {
    const { bytes, pages: count } = await tiledPdf(drawing, 'a4');
    const { pages, preferences } = await readPdf(bytes, 'deck-a4');
    expect(pages).toHaveLength(count);
    expect(count).toBe(1 + tiledPages(drawing, 'a4'));
    const named = pages.slice(1).map(({ words }) => words.map(({ text }) => text));
    expect(
      named.map((words) => words.find((word) => /^[A-Z]\d$/.test(word) && words.includes('sled_deck: outer'))),
    ).toHaveLength(14);
    const overview = pages[0]?.words.map(({ text }) => text) ?? [];
    expect(overview).toContain('14 pages of A4 behind this one, by row and column.');
    for (const name of ['A1', 'A7', 'B1', 'B7']) expect(overview).toContain(name);
    for (const page of pages) expect(bars(page)).toHaveLength(1);
    for (const { width, height } of pages)
      expect([width, height]).toEqual([expect.closeTo(595.28, 1), expect.closeTo(841.89, 1)]);
    // The print dialog is asked not to fit the page.
    expect((preferences as ReadonlyMap<string, string>).get('PrintScaling')).toBe('None');
  });

  it('has the size that the recipe says: lengths of the drawing are lengths of the paper', async () => {
    const line: Drawing = {
      title: 'a line',
      seenFrom: 'bag side',
      low: { x: 0, y: 0 },
      high: { x: 0.15, y: 0.05 },
      items: [
        {
          kind: 'line',
          layer: 'mark',
          closed: false,
          points: [
            { x: 0, y: 0 },
            { x: 0.15, y: 0.05 },
          ],
        },
      ],
    };
    const { pages } = await readPdf((await tiledPdf(line, 'letter')).bytes);
    expect(pages).toHaveLength(2);
    const drawn = pages[1]?.lines.filter(({ from, to }) => from[0] !== to[0] && from[1] !== to[1]) ?? [];
    expect(drawn).toHaveLength(1);
    const [{ from, to }] = drawn as [PdfPage['lines'][number]];
    expect(to[0] - from[0]).toBeCloseTo(pt(150), 3);
    expect(to[1] - from[1]).toBeCloseTo(pt(50), 3);
    expect(pages[1]?.lines.length).toBeLessThan(20);
  });

  it('is laid together cross on cross: neighbours share 10 mm, and the drawing goes on where it left off', async () => {
    const { box, tiles, columns } = tiling({ width: 1190, height: 430 }, 'a4');
    for (const tile of tiles) {
      const right = tiles.find(({ row, column }) => row === tile.row && column === tile.column + 1);
      if (right === undefined) expect(tile.column).toBe(columns - 1);
      else expect(tile.shows.x + box.width - right.shows.x).toBeCloseTo(10, 9);
    }
    const { pages } = await readPdf((await tiledPdf(drawing, 'a4')).bytes);
    const [first, second] = [pages[1], pages[2]] as [PdfPage, PdfPage];
    expect(crosses(first)).toHaveLength(4);
    // On A1 the right crosses stand as far past the corner of the drawing as the left ones of A2.
    const [rightX] = crosses(first)
      .map(([x]) => x)
      .sort((a, b) => b - a);
    const [leftX] = crosses(second)
      .map(([x]) => x)
      .sort((a, b) => a - b);
    const step = tiles[1]!.shows.x - tiles[0]!.shows.x;
    expect((rightX ?? 0) - (leftX ?? 0)).toBeCloseTo(pt(step), 3);
  });

  it('covers any drawing whole, on as few pages as either way round takes', () => {
    for (const [width, height] of [
      [50, 50],
      [1190, 430],
      [190, 269],
      [191, 40],
      [3000, 1270],
      [260, 180],
    ] as const) {
      for (const paper of ['a4', 'letter'] as const) {
        const { tiles } = tiling({ width, height }, paper);
        const [first, last] = [tiles[0]!.shows, tiles.at(-1)!.shows];
        expect(first.x).toBeLessThanOrEqual(1e-9);
        expect(first.y).toBeLessThanOrEqual(1e-9);
        expect(last.x + last.width).toBeGreaterThanOrEqual(width - 1e-9);
        expect(last.y + last.height).toBeGreaterThanOrEqual(height - 1e-9);
      }
    }
    expect(tiling({ width: 260, height: 180 }, 'a4').tiles).toHaveLength(1);
    expect([tileName(0, 0), tileName(25, 8), tileName(26, 9), tileName(701, 0)]).toEqual(['A1', 'Z9', 'AA10', 'ZZ1']);
  });

  it('leaves out pages with nothing on them, and refuses what nobody lays together', async () => {
    const apartness = arranged(
      'two',
      [{ piece: piece('a', rounded(0.1, 0.1, 0.01)), label: ['a'], count: 2 }],
      undefined,
    );
    const far: Drawing = {
      ...apartness.drawing,
      high: { x: 5, y: 0.1 },
      items: apartness.drawing.items.concat({
        kind: 'circle',
        layer: 'drill',
        centre: { x: 4.99, y: 0.05 },
        radius: 0.01,
      }),
    };
    expect(tiledPages(far, 'a4')).toBe(2);
    const huge: Drawing = {
      ...drawing,
      low: { x: 0, y: 0 },
      high: { x: 30, y: 3 },
      items: [
        {
          kind: 'line',
          layer: 'cut',
          closed: true,
          points: [
            { x: 0, y: 0 },
            { x: 30, y: 0 },
            { x: 30, y: 3 },
            { x: 0, y: 3 },
          ],
        },
      ],
    };
    expect(tiledPages(huge, 'a4')).toBeGreaterThan(mostPages);
    await expect(tiledPdf(huge, 'a4')).rejects.toMatchObject({ name: 'TooManyPages' });
  });

  it('is the same on every run, and carries its own letters alone', async () => {
    const [one, other] = [await tiledPdf(drawing, 'a4'), await tiledPdf(drawing, 'a4')];
    expect(Buffer.from(one.bytes).equals(Buffer.from(other.bytes))).toBe(true);
    const text = Buffer.from(one.bytes).toString('latin1');
    const fonts = [...text.matchAll(/\/BaseFont \/([\w+-]+)/g)].map(([, name]) => name);
    expect(fonts.length).toBeGreaterThan(0);
    expect(fonts.filter((name) => !/^[A-Z]{6}\+DejaVuSans(-Bold)?$/.test(name ?? ''))).toEqual([]);
    expect(text).toMatch(/\/FontFile2 /);
  });
});

describe('letters that the font lacks', () => {
  it('stand as their number and are told of; what it has is written', async () => {
    const doc = newPdf('x');
    expect(spelled(doc, 'é Ω ж 日')).toBe('é Ω ж [U+65E5]');
    const named: Drawing = { ...drawing, title: 'deck 日本 é' };
    const { bytes, lacking } = await tiledPdf(named, 'a4');
    expect(lacking).toEqual(['日', '本']);
    const words = (await readPdf(bytes)).pages[0]?.words.map(({ text }) => text) ?? [];
    expect(words).toContain('deck [U+65E5][U+672C] é');
    expect(words).toContain('The font lacks U+65E5, U+672C; they stand as their numbers.');
  });

  it('do no harm, whatever a name holds', async () => {
    const { bytes } = await tiledPdf(drawingOfPiece(piece('x', rounded(0.15, 0.1, 0.02)), [hostileName]), 'a4');
    const { pages } = await readPdf(bytes, 'hostile');
    expect(pages[1]?.words.map(({ text }) => text).join(' ')).toContain('<script>');
  });
});

describe('a drawing on one page', () => {
  const roll = arranged(
    'Roll of triax_680',
    [deck, body, pad, keel].map((each) => ({ piece: each, label: [each.name], count: 2 })),
    1.27,
  ).drawing;

  it('is to a usual scale that it names, and inside the page', async () => {
    const { pages } = await readPdf((await drawingPdf(roll, { paper: 'letter' })).bytes, 'roll-letter');
    expect(pages).toHaveLength(1);
    const [page] = pages as [PdfPage];
    expect(page.words.map(({ text }) => text)).toContain('scale 1:20');
    expect(bars(page)).toHaveLength(1);
    for (const { from, to } of page.lines)
      for (const [x, y] of [from, to]) expect(x > 0 && x < page.width && y > 0 && y < page.height).toBe(true);
  });

  it('fits, or has the scale that is asked for', async () => {
    expect(usualScale(0.3)).toBe(0.2);
    expect(usualScale(1)).toBe(1);
    expect(usualScale(0.04)).toBeCloseTo(0.02);
    const words = async (scale: 'fit' | number) =>
      (await readPdf((await drawingPdf(drawing, { paper: 'a4', scale })).bytes)).pages[0]?.words.map(
        ({ text }) => text,
      );
    expect(await words(0.1)).toContain('scale 1:10');
    expect((await words('fit'))?.find((word) => word.startsWith('scale'))).toMatch(/^scale 1:4\.\d\d$/);
  });

  it('hatches cloth along its fibres', async () => {
    const hatched: Drawing = {
      title: 'cloth',
      seenFrom: 'bag side',
      low: { x: 0, y: 0 },
      high: { x: 0.1, y: 0.1 },
      items: [
        {
          kind: 'line',
          layer: 'cloth',
          closed: true,
          hatch: Math.PI / 4,
          points: [
            { x: 0, y: 0 },
            { x: 0.1, y: 0 },
            { x: 0.1, y: 0.1 },
            { x: 0, y: 0.1 },
          ],
        },
      ],
    };
    const { pages } = await readPdf((await drawingPdf(hatched, { paper: 'a4' })).bytes, 'hatched');
    const slanted =
      pages[0]?.lines.filter(({ from, to }) => Math.abs(to[1] - from[1] - (to[0] - from[0])) < 1e-3) ?? [];
    expect(slanted.length).toBeGreaterThan(20);
  });
});

/** The files of a recipe's pieces: names, words, and what whoever cuts is told. */
import { describe, expect, it } from 'vitest';
import type { Step } from '../../../calc/model/index.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import { CannotCut, type CutDesk, type CutOrder, cutFiles } from '../../../language/export/cut/cut-files.ts';
import { madeByLaybook } from '../../../language/export/made-by.ts';
import { tiledPdf } from '../../../language/export/pdf/index.ts';
import { allPieces, body, deck, hostileName, pad, piece, rounded } from '../../harness/flat-pieces.ts';
import { SLED } from '../../harness/sled-model.ts';
import { areaOfPath, readDxf, readSvg } from './read-back.ts';
import { readPdf } from './read-pdf.ts';

const order: CutOrder = { format: 'svg', by: 'piece', quantity: 1, paper: 'a4' };
const widths: Readonly<Record<string, number>> = { triax_680: 1.27, biax_440: 1.27, uni_c300: 0.3, foam_80: 1.22 };
const desk: CutDesk = { style: { units: 'si' }, rollWidth: (material) => widths[material], tiledPdf };
const cut = (pieces: readonly FlatPiece[], more: Partial<CutOrder> = {}) =>
  cutFiles(SLED, pieces, { ...order, ...more }, desk);
const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

describe('cut files', () => {
  it('are sealed, named after recipe and piece, and say how many are cut', async () => {
    const files = await cut(allPieces, { quantity: 3 });
    expect(files.map(({ name }) => name)).toEqual(
      ['outer', 'keel', 'body', 'pad'].map((name) => `sled_deck-x3-${name}.svg`),
    );
    for (const { bytes } of files) expect(madeByLaybook(bytes)).toBe(true);
    // Two of the pad for one part.
    expect(files[3]?.words).toBe(`${sizeOf(pad)}, cut 6 of biax_440`);
    const words = readSvg(textOf(files[3]?.bytes ?? new Uint8Array())).flatMap(({ name, text }) =>
      name === 'text' ? [text] : [],
    );
    expect(words).toEqual([
      'pad',
      'biax_440, cut 6',
      'sled_deck, revision 4',
      sizeOf(pad),
      'turned over when it is laid',
    ]);
  });

  it('say of a core that a step scores where no line says how', async () => {
    const scored = (...marks: FlatPiece['marks']) => ({ ...body, marks });
    const step: Step = {
      path: 'process.score',
      verb: 'score',
      arguments: [{ kind: 'word', word: 'body' }],
      phrases: [],
      clauses: [],
    };
    const words = async (core: FlatPiece, steps: readonly Step[]) => {
      const recipe = { ...SLED, process: { ...SLED.process!, steps } };
      const [file] = await cutFiles(recipe, [core], order, desk);
      return textOf(file?.bytes ?? new Uint8Array());
    };
    const said = 'scored by a step: how wide and how far apart is not written';
    expect(await words(scored(), [step])).toContain(said);
    expect(await words(scored(), [])).not.toContain(said);
    expect(await words(scored(), [{ ...step, arguments: [{ kind: 'word', word: 'rail' }] }])).not.toContain(said);
    const line = [
      { x: 0, y: -0.1 },
      { x: 0, y: 0.1 },
    ];
    expect(await words(scored({ kind: 'score', line, closed: false }), [step])).not.toContain(said);
  });

  it('tell a lane from the whole', async () => {
    const lane = { ...deck, name: 'outer 2/3', lane: { number: 2, of: 3, lap: 0.03 } };
    const [file] = await cut([lane], { format: 'dxf' });
    expect(file?.name).toBe('sled_deck-outer-2-of-3.dxf');
    const { entities } = readDxf(textOf(file?.bytes ?? new Uint8Array()));
    expect(entities.flatMap(({ text }) => text ?? [])).toContain('lane 2 of 3, laps 30 mm');
  });

  it('hold every copy where a material is cut at once, and name what is wider than it comes', async () => {
    const wide = piece('wide', rounded(2, 1.4, 0.1));
    const files = await cut([deck, pad, wide], { by: 'material', quantity: 4 });
    expect(files.map(({ name }) => name)).toEqual(['sled_deck-x4-triax_680.svg', 'sled_deck-x4-biax_440.svg']);
    const [triax, biax] = files;
    expect(triax?.notes).toEqual(['wide is wider than triax_680 comes']);
    expect(biax?.words).toMatch(/^8 pieces, \d+ mm at a width of 1270 mm$/);
    const areas = readSvg(textOf(biax?.bytes ?? new Uint8Array()))
      .filter(({ within }) => within.includes('cut'))
      .map(({ attributes }) => areaOfPath(attributes.d ?? ''));
    expect(areas).toHaveLength(8);
    for (const area of areas) expect(area / (pad.area * 1e6)).toBeCloseTo(1, 6);
  });

  it('say on paper how a piece comes to lie', async () => {
    const wordsOn = async (pieces: readonly FlatPiece[], by: CutOrder['by']) => {
      const [file] = await cut(pieces, { format: 'pdf', by });
      const { pages } = await readPdf(file?.bytes ?? new Uint8Array());
      return pages[0]?.words.map(({ text }) => text).join('\n');
    };
    expect(await wordsOn([pad], 'piece')).toContain('it is turned over when it is laid');
    expect(await wordsOn([deck], 'piece')).toContain('the same face comes to lie up in the mould');
    expect(await wordsOn([pad], 'material')).toContain('a piece that is turned over says so');
  });

  it('stand apart from each other and inside their folder, whatever the pieces are called', async () => {
    const files = await cut([
      piece(hostileName, rounded(0.1, 0.1, 0.01)),
      piece('CON', rounded(0.1, 0.1, 0.01)),
      piece('outer', rounded(0.1, 0.1, 0.01)),
      piece('OUTER', rounded(0.1, 0.1, 0.01)),
    ]);
    const names = files.map(({ name }) => name);
    for (const name of names) expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9_.-]*\.svg$/);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
  });

  it('are refused with a reason', async () => {
    await expect(cut([deck], { quantity: 0 })).rejects.toThrow('Cut for at least one part.');
    await expect(cut([deck], { quantity: 9000, by: 'material' })).rejects.toThrow(/^9000 pieces are more than/);
    await expect(cut([deck], { quantity: 200, by: 'material', format: 'pdf' })).rejects.toThrow(
      /would take more pages than anybody lays together \(\d+\)/,
    );
    const bare = cutFiles(SLED, [deck], { ...order, format: 'pdf' }, { style: desk.style, rollWidth: desk.rollWidth });
    await expect(bare).rejects.toThrow(CannotCut);
  });
});

function sizeOf({ length, width }: FlatPiece): string {
  return `${Math.round(length * 1000)} mm by ${Math.round(width * 1000)} mm`;
}

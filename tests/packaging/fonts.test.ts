/** The fonts that are packed: smaller than those of their package, and the same to read. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import PDFDocument from 'pdfkit';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyFonts } from '../setup/build.mjs';

/** What pdfkit reads of a font, which its declarations do not tell. */
interface Glyph {
  readonly id: number;
  readonly advanceWidth: number;
  readonly path: { toSVG(): string };
}
interface Font {
  readonly characterSet: readonly number[];
  readonly numGlyphs: number;
  readonly ascent: number;
  readonly descent: number;
  readonly lineGap: number;
  readonly unitsPerEm: number;
  readonly italicAngle: number;
  readonly capHeight: number;
  readonly xHeight: number;
  getGlyph(id: number): Glyph;
  layout(text: string): { readonly glyphs: readonly Glyph[]; readonly positions: readonly unknown[] };
}

/** A font as pdfkit takes it. */
function fontIn(file: string): Font {
  const inside: unknown = new PDFDocument({ font: file });
  return (inside as { readonly _font: { readonly font: Font } })._font.font;
}

const ours = 'node_modules/dejavu-fonts-ttf/ttf';
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'laybook-fonts-'));
  copyFonts(folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe.each(['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'])('%s', (name) => {
  const read = (file: string) => ({ bytes: readFileSync(file), font: fontIn(file) });

  it('has every letter of the whole font, of the same outline and width', () => {
    const whole = read(path.join(ours, name));
    const lean = read(path.join(folder, 'fonts', name));
    expect(lean.bytes.length).toBeLessThan(0.87 * whole.bytes.length);
    expect(whole.font.characterSet.length).toBeGreaterThan(5000);
    expect(lean.font.characterSet).toEqual(whole.font.characterSet);
    expect(lean.font.numGlyphs).toBe(whole.font.numGlyphs);
    const other = Array.from({ length: whole.font.numGlyphs }, (_, glyph) => glyph).filter((glyph) => {
      const [before, after] = [whole.font.getGlyph(glyph), lean.font.getGlyph(glyph)];
      return before.advanceWidth !== after.advanceWidth || before.path.toSVG() !== after.path.toSVG();
    });
    expect(other).toEqual([]);
    for (const measure of [
      'ascent',
      'descent',
      'lineGap',
      'unitsPerEm',
      'italicAngle',
      'capHeight',
      'xHeight',
    ] as const)
      expect(lean.font[measure]).toBe(whole.font[measure]);
  });

  it('sets words alike: pairs that stand closer, ligatures, letters that join', () => {
    const whole = read(path.join(ours, name)).font;
    const lean = read(path.join(folder, 'fonts', name)).font;
    for (const words of ['AVATAR To. fi ffl', 'Größe Ωμέγα Ящик', 'سلام عليكم', 'שלום', '½ ⅔ ± 20 °C']) {
      const [before, after] = [whole.layout(words), lean.layout(words)];
      expect(after.glyphs.map(({ id }) => id)).toEqual(before.glyphs.map(({ id }) => id));
      expect(after.positions).toEqual(before.positions);
    }
  });

  it('has sums that fit, by the specification of OpenType', () => {
    const { bytes } = read(path.join(folder, 'fonts', name));
    const sum = (from: number, to: number) => {
      let total = 0;
      for (let at = from; at < to; at += 4) total = (total + bytes.readUInt32BE(at)) >>> 0;
      return total;
    };
    expect(bytes.length % 4).toBe(0);
    // the whole file with its own adjustment in it
    expect(sum(0, bytes.length)).toBe(0xb1b0afba);
    for (let at = 12; at < 12 + 16 * bytes.readUInt16BE(4); at += 16) {
      const table = bytes.toString('latin1', at, at + 4);
      const [start, length] = [bytes.readUInt32BE(at + 8), bytes.readUInt32BE(at + 12)];
      const adjustment = table === 'head' ? bytes.readUInt32BE(start + 8) : 0;
      expect([table, (sum(start, start + ((length + 3) & ~3)) - adjustment) >>> 0]).toEqual([
        table,
        bytes.readUInt32BE(at + 4),
      ]);
    }
  });
});

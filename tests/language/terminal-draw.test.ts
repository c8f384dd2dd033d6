/** `laybook draw`: files of the sample's sled deck, read back by other libraries. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { root } from '../harness/sources.ts';
import { folderOf, laybook, type Ran } from '../harness/terminal.ts';
import { boxOfPath, readDxf, readSvg } from './export/read-back.ts';
import { readPdf } from './export/read-pdf.ts';

const sample = path.join(root, 'extension/sample');
const folders: { dispose(): void }[] = [];
afterEach(() => {
  for (const each of folders.splice(0)) each.dispose();
});

function folder(): string {
  const made = folderOf({});
  folders.push(made);
  return made.folder;
}

const draw = (from: string, ...args: string[]): Promise<Ran> =>
  laybook(from, 'draw', 'sled_deck', ...args.slice(0, 1), sample, ...args.slice(1));

describe('laybook draw', () => {
  it('writes the plan as an SVG, and says what it is', async () => {
    const from = folder();
    const ran = await draw(from, 'plan', '--out', 'deck.svg', '--size', 'short');
    expect(ran).toEqual({ code: 0, out: 'deck.svg: Plan of sled_deck, size short, seen from the bag side\n', err: '' });
    const elements = readSvg(readFileSync(path.join(from, 'deck.svg'), 'utf8'));
    const outline = elements.find(
      ({ attributes }) => attributes['data-path'] === 'part.outline' && attributes.class === 'shape closed',
    );
    const { width, height } = boxOfPath(outline?.attributes.d ?? '');
    expect([width, height].map((value) => Math.round(value * 1000) / 1000)).toEqual([980, 400]);
  });

  it('writes the section as a PDF page, its words as words', async () => {
    const from = folder();
    expect((await draw(from, 'section', '--out', 'deck.pdf', '--paper', 'letter')).code).toBe(0);
    const { pages } = await readPdf(readFileSync(path.join(from, 'deck.pdf')));
    expect(pages).toHaveLength(1);
    const words = pages[0]?.words.map(({ text }) => text).join('\n') ?? '';
    expect(words).toContain('thickness 10 times as large');
    expect(words).toContain('body, 20 mm');
  });

  it('writes chosen layers alone as a DXF, the same bytes again', async () => {
    const from = folder();
    for (const out of ['a.dxf', 'b.dxf']) await draw(from, 'plan', '--out', out, '--layers', 'outline, cloth');
    const [a, b] = ['a.dxf', 'b.dxf'].map((name) => readFileSync(path.join(from, name)));
    expect(a?.equals(b ?? Buffer.of())).toBe(true);
    const layers = new Set(readDxf(a?.toString('utf8') ?? '').entities.map(({ layer }) => layer));
    expect(layers).toEqual(new Set(['OUTLINE', 'CLOTH']));
  });

  it.each([
    ['1.4 m by 0.8 m', 'rectangle', 1400],
    ['8 m by 0.8 m', 'its two long edges', 2250],
    ['8 m by 4 m', 'nothing', 900],
  ])('draws a part on a tool of %s large enough to read: of the tool %s', async (flat, _, wide) => {
    const from = folder();
    writeFileSync(
      path.join(from, 'lid.layup'),
      `tool table {\n  flat ${flat}\n}\nrecipe lid {\n  part {\n    outline rectangle 900 mm by 300 mm\n  }\n` +
        '  stack from tool table {\n    ply outer biax_440 at 0 deg, net\n  }\n}\n',
    );
    const ran = await laybook(from, 'draw', 'lid', 'plan', '--out', 'lid.svg', '--layers', 'outline, tool');
    expect([ran.code, ran.err]).toEqual([0, '']);
    const boxes = readSvg(readFileSync(path.join(from, 'lid.svg'), 'utf8'))
      .filter(({ attributes }) => /^(M|m)/.test(attributes.d ?? ''))
      .map(({ attributes }) => boxOfPath(attributes.d ?? '').width);
    expect(Math.round(Math.max(...boxes))).toBe(wide);
  });

  it('writes over what it made itself, and over nothing else', async () => {
    const from = folder();
    await draw(from, 'plan', '--out', 'deck.svg');
    expect((await draw(from, 'section', '--out', 'deck.svg')).code).toBe(0);
    writeFileSync(path.join(from, 'deck.svg'), 'mine');
    const refused = await draw(from, 'plan', '--out', 'deck.svg');
    expect(refused.code).toBe(2);
    expect(readFileSync(path.join(from, 'deck.svg'), 'utf8')).toBe('mine');
    expect((await draw(from, 'plan', '--out', 'deck.svg', '--force')).code).toBe(0);
  });

  it('says what is wrong with a call', async () => {
    const from = folder();
    const errors = [
      [['plan', '--out', 'deck.png'], /--out ends with \.svg or \.pdf or \.dxf, not with \.png/],
      [['plan', '--out', 'deck.svg', '--layers', 'clth'], /no layer clth; perhaps cloth/],
      [['plan', '--out', 'deck.svg', '--size', 'shrt'], /no size shrt; perhaps short/],
      [['flow', '--out', 'deck.svg'], /plan, section/],
    ] as const;
    for (const [args, words] of errors) {
      const { code, err } = await draw(from, ...args);
      expect(code).toBe(2);
      expect(err).toMatch(words);
    }
  });
});

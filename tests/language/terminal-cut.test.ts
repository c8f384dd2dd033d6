/** `laybook cut`: files of the sample's sled deck, and what happens to files that stand in the way. */
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { UsageError } from '../../language/terminal/exit-codes.ts';
import { writeFiles } from '../../language/terminal/write-files.ts';
import { root } from '../harness/sources.ts';
import { folderOf, laybook, type Ran } from '../harness/terminal.ts';
import { areaOfPath, areaOfPolyline, readDxf, readSvg } from './export/read-back.ts';
import { readPdf } from './export/read-pdf.ts';

const sample = path.join(root, 'extension/sample');
const folders: { dispose(): void }[] = [];
afterEach(() => {
  for (const each of folders.splice(0)) each.dispose();
});

function folder(files: Readonly<Record<string, string>> = {}): string {
  const made = folderOf(files);
  folders.push(made);
  return made.folder;
}

const cutSled = (out: string, ...more: string[]): Promise<Ran> =>
  laybook(root, 'cut', 'sled_deck', sample, '--out', out, ...more);

describe('laybook cut', () => {
  it('writes a file a piece and says what is on it', async () => {
    const out = folder();
    const { code, out: told, err } = await cutSled(out);
    expect(err).toBe('');
    expect(code).toBe(0);
    const names = readdirSync(out).sort();
    expect(names).toEqual(
      ['bag', 'body', 'bolts', 'inner', 'keel', 'mesh', 'outer', 'pad', 'peel'].map((name) => `sled_deck-${name}.svg`),
    );
    expect(told).toMatch(/^sled_deck-pad\.svg +260 mm by 180 mm, cut 1 of biax_440$/m);
    expect(told).toMatch(/^9 files for one part in /m);
    // The zone of the patch: 260 by 180 mm with corners of 40 mm, so (4 - pi) r^2 are missing at its corners.
    const pad = readSvg(readFileSync(path.join(out, 'sled_deck-pad.svg'), 'utf8'));
    const [edge] = pad.filter(({ within }) => within.includes('cut'));
    expect(areaOfPath(edge?.attributes.d ?? '') / (260 * 180 - (4 - Math.PI) * 40 ** 2)).toBeCloseTo(1, 6);
  });

  it('writes the same in DXF, and the same bytes again', async () => {
    const [one, other] = [folder(), folder()];
    await cutSled(one, '--format', 'dxf');
    await cutSled(other, '--format', 'dxf');
    for (const name of readdirSync(one)) {
      expect(readFileSync(path.join(one, name)).equals(readFileSync(path.join(other, name)))).toBe(true);
    }
    const { entities } = readDxf(readFileSync(path.join(one, 'sled_deck-pad.dxf'), 'utf8'));
    const [edge] = entities.filter(({ layer }) => layer === 'CUT');
    expect(areaOfPolyline(edge?.vertices ?? []) / (260 * 180 - (4 - Math.PI) * 40 ** 2)).toBeCloseTo(1, 6);
  });

  it('puts all pieces of a material side by side for as many parts as are asked for', async () => {
    const out = folder();
    const { out: told } = await cutSled(out, '--by', 'material', '--quantity', '3', '--size', 'short');
    expect(readdirSync(out)).toContain('sled_deck-short-x3-triax_680.svg');
    expect(told).toMatch(/triax_680\.svg +6 pieces, \d+ mm at a width of 1270 mm/);
    expect(told).toContain('for 3 parts in ');
    const cuts = readSvg(readFileSync(path.join(out, 'sled_deck-short-x3-triax_680.svg'), 'utf8')).filter(
      ({ within }) => within.includes('cut'),
    );
    expect(cuts.length).toBeGreaterThanOrEqual(6);
  });

  it('writes pages of either paper', async () => {
    const out = folder();
    await cutSled(out, '--format', 'pdf', '--paper', 'letter');
    const { pages, info } = await readPdf(readFileSync(path.join(out, 'sled_deck-pad.pdf')));
    expect(info.Creator).toMatch(/^made by laybook/);
    expect(pages.map(({ width, height }) => [width, height].sort((a, b) => a - b))).toEqual(
      pages.map(() => [expect.closeTo(612, 3), expect.closeTo(792, 3)]),
    );
  });

  it('says what it does not know, and ends with 2', async () => {
    const out = folder();
    for (const [args, words] of [
      [['no_such', sample, '--out', out], 'no recipe is called no_such'],
      [['sled_deck', sample, '--out', out, '--size', 'huge'], 'has no size huge'],
      [['sled_deck', sample, '--out', out, '--quantity', '-1'], 'no whole number'],
      [['sled_deck', sample, '--out', out, '--quantity', '0'], 'at least one part'],
      [['sled_deck', sample, '--out', out, '--format', 'png'], 'cannot be png: there are svg, dxf, pdf'],
      [['sled_deck', sample], '--out <folder> must be given'],
    ] as const) {
      const { code, err } = await laybook(root, 'cut', ...args);
      expect([code, err]).toEqual([2, expect.stringContaining(words)]);
    }
    expect(readdirSync(out)).toEqual([]);
  });
});

describe('a file that stands in the way', () => {
  it('is written over only while it is as we left it', async () => {
    const out = folder();
    await cutSled(out);
    expect((await cutSled(out, '--units', 'us')).code).toBe(0);
    const pad = path.join(out, 'sled_deck-pad.svg');
    writeFileSync(pad, readFileSync(pad, 'utf8').replace('</svg>', '<path d="M0 0L9 9"/></svg>'));
    const before = readFileSync(path.join(out, 'sled_deck-outer.svg'));
    const { code, err } = await cutSled(out);
    expect(code).toBe(2);
    expect(err).toMatch(
      /sled_deck-pad\.svg would be written over, and laybook did not make it or it was changed since/,
    );
    // None was written, the unchanged ones neither.
    expect(readFileSync(path.join(out, 'sled_deck-outer.svg')).equals(before)).toBe(true);
    expect((await cutSled(out, '--force')).code).toBe(0);
    expect(readFileSync(pad, 'utf8')).not.toContain('M0 0L9 9');
  });

  it('is never reached through a name or a link, and no draft is left behind', async () => {
    const out = folder({ 'outside.txt': 'mine' });
    const inner = path.join(out, 'inner');
    const bytes = new TextEncoder().encode('new');
    for (const name of ['../outside.txt', '..', '', 'a/b', path.join(out, 'outside.txt')]) {
      await expect(writeFiles(inner, [{ name, bytes }], { from: out })).rejects.toThrow('no name of a file');
    }
    mkdirSync(inner);
    symlinkSync(path.join(out, 'outside.txt'), path.join(inner, 'link.txt'));
    const link = [{ name: 'link.txt', bytes }];
    await expect(writeFiles(inner, link, { from: out })).rejects.toThrow(UsageError);
    await writeFiles(inner, link, { from: out, force: true });
    expect(readFileSync(path.join(out, 'outside.txt'), 'utf8')).toBe('mine');
    expect(readdirSync(inner)).toEqual(['link.txt']);
  });

  it('is told in words where it cannot be written', async () => {
    const out = folder({ file: 'x' });
    const bytes = new TextEncoder().encode('new');
    await expect(writeFiles(path.join(out, 'file'), [{ name: 'a', bytes }], { from: out })).rejects.toThrow(
      /^file is (a file|not there)/,
    );
    mkdirSync(path.join(out, 'folder'));
    await expect(writeFiles(out, [{ name: 'folder', bytes }], { from: out, force: true })).rejects.toThrow(UsageError);
    expect(existsSync(path.join(out, 'folder'))).toBe(true);
    expect(readdirSync(out).sort()).toEqual(['file', 'folder']);
  });
});

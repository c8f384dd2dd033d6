/** `laybook sheet`: what goes to the bench, read back by a library that did not write it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { describe, expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { folderOf, laybook } from '../harness/terminal.ts';
import { type PdfPage, readPdf } from './export/read-pdf.ts';

const sample = path.join(root, 'extension/sample');
const recipes = ['sled_deck', 'drip_tray', 'instrument_panel', 'hatch_lid', 'side_panel', 'hatch_board'];

/** A folder that goes when the test is over. */
function here(files: Parameters<typeof folderOf>[0]): string {
  const { folder, dispose } = folderOf(files);
  onTestFinished(dispose);
  return folder;
}

async function sheet(name: string, ...args: string[]): Promise<Uint8Array> {
  const folder = here({});
  const file = path.join(folder, args.includes('html') ? 'sheet.html' : 'sheet.pdf');
  const more = args.filter((arg) => arg !== 'html');
  const { code, err } = await laybook(folder, 'sheet', name, sample, '--out', file, ...more);
  expect([code, err]).toEqual([0, '']);
  return new Uint8Array(readFileSync(file));
}

const said = ({ words }: PdfPage): string => words.map(({ text }) => text).join(' ');

describe('the build sheet on paper', () => {
  for (const name of recipes) {
    it(`of ${name} has every step with what it needs on one page`, async () => {
      const bytes = await sheet(name, '--number', '31');
      const { pages } = await readPdf(bytes, `sheet-${name}`);
      // embedded, and no other font beside them
      const fonts =
        Buffer.from(bytes)
          .toString('latin1')
          .match(/\/BaseFont \/\S+/g) ?? [];
      expect(new Set(fonts.map((font) => font.replace(/[A-Z]{6}\+/, '')))).toEqual(
        new Set(['/BaseFont /DejaVuSans', '/BaseFont /DejaVuSans-Bold']),
      );
      const text = pages.map(said);
      const { out } = await laybook(sample, 'report', name, '.', '--format', 'json');
      const steps: { readonly depth: number }[] = JSON.parse(out).steps;
      const counts: number[] = [];
      for (const { depth } of steps) {
        counts.length = depth + 1;
        counts[depth] = (counts[depth] ?? 0) + 1;
        const number = counts.join('.');
        // the number of a step stands once, at the left of its text; it is `continued` only where no page could hold it
        const on = pages.filter(({ words }) => words.some((word) => word.text === number && word.x < 100));
        expect([name, number, on.length]).toEqual([name, number, 1]);
      }
      expect(text.join(' ')).not.toMatch(/\bundefined\b|\bNaN\b|\{\w+\}|\[U\+/);
      for (const [i, page] of text.entries()) expect(page).toContain(`page ${i + 1} of ${pages.length}`);
    });
  }

  it('says who it is of: recipe, size, revision, number and day, and so does its code', async () => {
    const bytes = await sheet('sled_deck', '--size', 'short', '--number', '32', '--date', '2026-11-25');
    const { pages } = await readPdf(bytes, 'sheet-short', 200);
    const first = said(pages[0] as PdfPage);
    for (const word of ['Rescue sled deck', 'short', '32', '2026-11-25', '980 mm by 400 mm'])
      expect(first).toContain(word);
    const image = await loadImage(path.join(root, 'tests/out/pdf/sheet-short-1.png'));
    const canvas = createCanvas(image.width, image.height);
    const context = canvas.getContext('2d');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    expect(jsQR(new Uint8ClampedArray(data), image.width, image.height)?.data).toMatch(
      /^laybook sled_deck short r4 32\b/,
    );
  });

  it('has the pots with what the balance must show: worked by hand, 100:31 of 1.703 kg and 2 % of paste', async () => {
    const { pages } = await readPdf(await sheet('sled_deck'));
    const pot = pages.map(said).find((page) => page.includes('Mix epoxy_slow')) ?? '';
    for (const mass of ['1300 g', '403 g', '1703 g', '33.9 g', '1736.9 g']) expect(pot).toContain(mass);
    // 5 % of 403 g either way on top of 1300 g
    expect(pot).toContain('1682.9 g to 1723.2 g');
    // the pot, its cautions and its blanks stand on the page of the step that pours it
    expect(pot).toContain('Infuse.');
    expect(pot).toMatch(/Caution\. Epoxy sensitises/);
    expect(pot).toContain('feed opened at');
  });

  it('is the same to the byte twice, and another on other paper', async () => {
    const [first, second, letter] = await Promise.all([
      sheet('drip_tray'),
      sheet('drip_tray'),
      sheet('drip_tray', '--paper', 'letter'),
    ]);
    expect(Buffer.compare(first, second)).toBe(0);
    const [a4, us] = [await readPdf(first), await readPdf(letter)];
    expect(a4.pages[0]?.width).toBeCloseTo((210 * 72) / 25.4, 1);
    expect(us.pages[0]?.width).toBeCloseTo(8.5 * 72, 1);
  });

  it('shows words in Greek and Cyrillic, and says which letters the font lacks instead of an empty box', async () => {
    const recipe = `recipe plate "Πλάκα Плита 板" {
  part { outline circle 300 mm }
  stack { ply a csm_450 }
  process hand with polyester_ortho at 20 degC { lay a }
}
`;
    const folder = here({ 'plate.layup': recipe });
    const { code, err } = await laybook(folder, 'sheet', 'plate', '.', '--out', 'plate.pdf');
    expect([code, err]).toEqual([0, 'laybook: the font has no letters for 板; --font names one that has them\n']);
    const { pages } = await readPdf(new Uint8Array(readFileSync(path.join(folder, 'plate.pdf'))));
    const first = said(pages[0] as PdfPage);
    expect(first).toContain('Πλάκα Плита [U+677F]');
    expect(first).toContain('The font has no letters for U+677F');
  });

  it('is made of half a recipe too, and says what cannot be told', async () => {
    const folder = here({
      'half.layup': 'recipe half {\n  stack {\n    ply a triax\n  }\n  process infusion {\n    lay\n',
    });
    const { code } = await laybook(folder, 'sheet', 'half', '.', '--out', 'half.pdf');
    expect(code).toBe(0);
    const { pages } = await readPdf(new Uint8Array(readFileSync(path.join(folder, 'half.pdf'))));
    expect(pages.map(said).join(' ')).toContain('Stands open');
  });
});

describe('the build sheet as a page', () => {
  it('loads nothing, runs nothing, and bears hostile words', async () => {
    const folder = here({
      'x.layup':
        'recipe x "<script>alert(1)</script>" {\n  part { outline circle 300 mm }\n  stack { ply a csm_450, note "<img src=x onerror=1>" }\n  process hand with polyester_ortho { lay a }\n}\n',
    });
    const { code } = await laybook(folder, 'sheet', 'x', '.', '--out', 'x.html');
    expect(code).toBe(0);
    const html = readFileSync(path.join(folder, 'x.html'), 'utf8');
    expect(html).not.toMatch(/<script|<img|https?:\/\/(?!www\.w3\.org)/);
    expect(html).toContain('&lt;script&gt;');
    expect(html).toContain("default-src 'none'");
  });

  it('has the same steps as the paper', async () => {
    const html = Buffer.from(await sheet('sled_deck', 'html')).toString('utf8');
    expect(html.match(/class="step whole"/g)?.length).toBe(29);
    expect(html).toContain('1682.9 g to 1723.2 g');
  });

  it('says what is wrong with a call', async () => {
    const folder = here({});
    expect((await laybook(folder, 'sheet', 'sled_deck', sample, '--out', 'x.txt')).err).toContain(
      'ends with .pdf or .html',
    );
    expect((await laybook(folder, 'sheet', 'sled_dek', sample, '--out', 'x.pdf')).err).toContain('perhaps sled_deck');
    expect((await laybook(folder, 'sheet', 'sled_deck', sample, '--out', 'x.pdf', '--date', 'May')).code).toBe(2);
  });
});

/** `laybook sheet`: what goes to the bench, read back by a library that did not write it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { root } from '../harness/sources.ts';
import { folderOf, laybook } from '../harness/terminal.ts';
import { type PdfPage, readPdf } from './export/read-pdf.ts';

const sample = path.join(root, 'extension/sample');
// written, read back and painted: more than a moment on a busy machine
vi.setConfig({ testTimeout: 60_000 });

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
    for (const mass of ['1300 g', '403 g', '33.9 g', '1333.9 g', '1736.9 g']) expect(pot).toContain(mass);
    // pigment before the hardener: 5 % of 403 g either way on top of 1333.9 g
    expect(pot).toContain('1716.8 g to 1757.1 g');
    expect(pot.indexOf('grey_paste')).toBeLessThan(pot.indexOf('hardener', pot.indexOf('Mix epoxy_slow')));
    expect(pot).toContain('Mix it when everything before this step is done');
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

  it('has every step whole but one that no page holds: that goes on overleaf with its caution and the head of its table', async () => {
    const plies = Array.from({ length: 60 }, (_, i) => `    ply p${i} csm_450, note "Ply ${i}, brush it out."`).join(
      '\n',
    );
    const folder = here({
      'slab.layup': `recipe slab {
  part { outline rectangle 600 mm by 300 mm }
  stack from tool flat_tool {
${plies}
  }
  process hand with polyester_laminating at 20 degC {
    lay stack, fibre 30 % by weight, note "${'Watch the heat of the pot. '.repeat(40)}"
    demould
  }
}
tool flat_tool {
  flat 1600 mm by 700 mm
}
`,
    });
    expect((await laybook(folder, 'sheet', 'slab', '.', '--out', 'slab.pdf')).code).toBe(0);
    const { pages } = await readPdf(new Uint8Array(readFileSync(path.join(folder, 'slab.pdf'))), 'sheet-slab');
    const text = pages.map(said);
    // the pages of step 1: none is empty, each says what to do and what can hurt, and every layer stands once
    const own = text.filter((page) => page.includes('Lay the whole stack.'));
    expect(own.length).toBeGreaterThan(2);
    expect(own.filter((page) => page.includes('continued'))).toHaveLength(own.length - 1);
    for (const page of own) expect(page).toContain('Caution. Styrene');
    for (let i = 0; i < 60; i++) expect(own.filter((page) => page.includes(`Ply ${i}, brush`))).toHaveLength(1);
    for (const page of own.filter((each) => /Ply \d+,/.test(each)))
      expect(page).toContain('lay material angle mind done');
    // the foot alone is on no page
    for (const { words } of pages) expect(words.length).toBeGreaterThan(4);
    expect(pages.length).toBeLessThan(20);
    expect(text.join(' ').match(/Watch the heat of the pot\./g)).toHaveLength(40);
  });

  it('has a row for each of several pots, to write down what each of them weighed and when it was mixed', async () => {
    const { pages } = await readPdf(await sheet('drip_tray'), 'sheet-drip_tray-pots');
    const brush = pages.map(said).find((page) => page.includes('Mix gel_grey: 2 pots')) ?? '';
    expect(brush).toMatch(/pot resin mekp_50 mixed at empty at 1 2 /);
    expect(brush).not.toContain('as weighed');
    const one = pages
      .map(said)
      .find((page) => page.includes('Mix polyester_ortho: 1049 g') || page.includes('1.049 kg'));
    expect(one).toContain('as weighed');
  });

  it('has a table for the leak readings with their times, and what the recipe accepts at the step that it is about', async () => {
    const { pages } = await readPdf(await sheet('sled_deck'));
    const leak = pages.map(said).find((page) => page.includes('Pull full vacuum')) ?? '';
    for (const word of ['reading', 'time', 'gauge, mbar', 'pump shut off', 'half way', 'at the end', 'once more'])
      expect(leak).toContain(word);
    const bag = pages.map(said).find((page) => page.includes('Bag film_50')) ?? '';
    expect(bag).toContain('Accepted: bag/few-pleats: The tool is flat.');
  });

  it('keeps long names, odd numbers and words from right to left on the page', async () => {
    const name = 'a_name_that_never_ends_'.repeat(8);
    const folder = here({
      'long.layup': `recipe ${name} "${'Wörter ohne Ende '.repeat(14)} \u0644\u0648\u062d\u0629" {\n  part { outline circle 300 mm }\n  stack {\n    ply ${'x'.repeat(120)} csm_450, note "${'y'.repeat(2000)}"\n  }\n  process hand with polyester_laminating { lay stack }\n}\n`,
    });
    const { code } = await laybook(folder, 'sheet', name, '.', '--out', 'long.pdf', '--number', '31/b ü <&>');
    expect(code).toBe(0);
    const { pages } = await readPdf(new Uint8Array(readFileSync(path.join(folder, 'long.pdf'))), 'sheet-long');
    const first = said(pages[0] as PdfPage);
    expect(first).toContain('31/b ü <&>');
    expect(first).toContain('\u0644\u0648\u062d\u0629');
    expect(pages.map(said).join('').replace(/[^y]/g, '').length).toBeGreaterThanOrEqual(2000);
    // nothing runs off the page
    for (const { words, width } of pages) for (const { x } of words) expect(x).toBeLessThan(width - 30);
    expect(pages.length).toBeLessThan(9);
  });

  it('says so where the name of the recipe is longer than the largest code holds', async () => {
    // ISO/IEC 18004, version 40 at level M: 2,331 bytes, of which `laybook `, ` - - -` take 14
    for (const [length, has] of [
      [2317, true],
      [2318, false],
    ] as const) {
      const name = 'n'.repeat(length);
      const folder = here({
        'long.layup': `recipe ${name} "Lid" {\n  part { outline circle 300 mm }\n  stack { ply a csm_450 }\n  process hand with polyester_laminating { lay a }\n}\n`,
      });
      for (const file of ['long.pdf', 'long.html']) {
        const { code, err } = await laybook(folder, 'sheet', name, '.', '--out', file);
        expect([code, err]).toEqual([0, '']);
      }
      const html = readFileSync(path.join(folder, 'long.html'), 'utf8');
      const { pages } = await readPdf(new Uint8Array(readFileSync(path.join(folder, 'long.pdf'))));
      const tells = 'The name of this recipe is too long for a code to scan.';
      expect(html.includes(tells)).toBe(!has);
      expect(html.includes('role="img" shape-rendering="crispEdges"')).toBe(has);
      expect(pages.map(said).join(' ').includes('too long for a code')).toBe(!has);
    }
  });

  it('counts one as one', async () => {
    const folder = here({
      'lid.layup': `recipe lid {
  part {
    outline rectangle 500 mm by 300 mm
    cutout circle 60 mm at (0 mm, 0 mm)
  }
  stack from tool flat_tool {
    coat gel gel_iso_grey 500 um wet
    ply a csm_450
    ply b cloth_that_nobody_has
  }
  process hand with polyester_laminating at 20 degC { lay gel to a }
}
tool flat_tool {
  flat 1600 mm by 900 mm
  cost 100 EUR over 1 parts
}
`,
    });
    expect((await laybook(folder, 'sheet', 'lid', '.', '--out', 'lid.html')).code).toBe(0);
    const html = readFileSync(path.join(folder, 'lid.html'), 'utf8');
    expect(html).toMatch(/Open findings in lid\.layup: \d+ errors?, \d+ warnings?, \d+ notes?/);
    const { out: lots } = await laybook(folder, 'lots', '.', '--within', '1', '--today', '2026-06-01');
    expect(lots).toContain('expires within 1 day is');
    expect(html).not.toMatch(/(?<![\d.,])1 (?:errors|warnings|notes|layers|pieces|darts)\b/);
  });

  it('breaks no word of the cut list where its column is as wide as the word', async () => {
    const { pages } = await readPdf(await sheet('drip_tray'));
    const text = pages.map(said).join(' ');
    expect(text).toMatch(/lane 1 of 2/);
    expect(text).toMatch(/\blapped\b/);
  });

  it('is in feet and pounds where asked, but for what balances and syringes show', async () => {
    const { pages } = await readPdf(await sheet('drip_tray', '--units', 'us', '--paper', 'letter'));
    const text = pages.map(said).join(' ');
    expect(text).toMatch(/mekp_50 \d+(\.\d)? g \(\d+(\.\d+)? ml\)/);
    expect(text).toContain('degF');
    expect(text.replace('one was seen at 105 degC', '')).not.toMatch(/degC|fl oz/);
  });

  it('says what each piece weighs as it is cut, with what is trimmed off later', async () => {
    const folder = here({
      'plate.layup': `recipe plate {
  part { outline rectangle 600 mm by 300 mm }
  stack from tool flat_tool {
    ply a csm_450, oversize 50 mm
    ply b csm_450, net
    ply c carbon_prepreg_200 at 0 deg, net
  }
  process hand with polyester_laminating at 20 degC { lay stack }
}
tool flat_tool {
  flat 1600 mm by 900 mm
}
`,
    });
    expect((await laybook(folder, 'sheet', 'plate', '.', '--out', 'plate.html')).code).toBe(0);
    const html = readFileSync(path.join(folder, 'plate.html'), 'utf8');
    // by hand: 0.7 m by 0.4 m less (4 - pi) 50 mm x 50 mm at its round corners, and 0.6 m by 0.3 m, of 450 g/m2
    expect(html).toContain('<td>a</td><td>csm_450</td><td class="number">125 g</td>');
    expect(html).toContain('<td>b</td><td>csm_450</td><td class="number">81 g</td>');
    // a prepreg is weighed with its resin: 0.18 m2 of 200 g/m2 are 36 g of fibre, with 42 % of resin 62.1 g
    expect(html).toContain('<td>c</td><td>carbon_prepreg_200</td><td class="number">62.1 g</td>');
  });

  it('takes the font that is named', async () => {
    const font = path.join(root, 'node_modules/dejavu-fonts-ttf/ttf/DejaVuSerif.ttf');
    const bytes = await sheet('drip_tray', '--font', font);
    expect(Buffer.from(bytes).toString('latin1')).toMatch(/\/BaseFont \/[A-Z]{6}\+DejaVuSerif/);
    const folder = here({});
    const missing = await laybook(folder, 'sheet', 'drip_tray', sample, '--out', 'x.pdf', '--font', 'none.ttf');
    expect([missing.code, missing.err]).toEqual([2, expect.stringContaining('none.ttf')]);
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
    expect(html).toContain('1716.8 g to 1757.1 g');
  });

  it("writes over its own file, and over nobody else's", async () => {
    const folder = here({ 'mine.html': 'mine', 'mine.pdf': 'mine' });
    for (const file of ['mine.html', 'mine.pdf']) {
      const refused = await laybook(folder, 'sheet', 'drip_tray', sample, '--out', file);
      expect([refused.code, refused.err]).toEqual([2, expect.stringContaining(`${file} would be written over`)]);
      expect(readFileSync(path.join(folder, file), 'utf8')).toBe('mine');
      expect((await laybook(folder, 'sheet', 'drip_tray', sample, '--out', file, '--force')).code).toBe(0);
      const before = readFileSync(path.join(folder, file));
      expect((await laybook(folder, 'sheet', 'drip_tray', sample, '--out', file)).code).toBe(0);
      expect(Buffer.compare(before, readFileSync(path.join(folder, file)))).toBe(0);
    }
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

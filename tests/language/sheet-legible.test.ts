/** What is read at the bench is large enough, and what is alike stands together. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { folderOf, laybook } from '../harness/terminal.ts';
import { type ReadPdf, readPdf } from './export/read-pdf.ts';

const sample = path.join(root, 'extension/sample');

async function sheet(name: string, text?: string, paper = 'a4'): Promise<{ pdf: ReadPdf; html: string }> {
  const { folder, dispose } = folderOf(text === undefined ? {} : { 'book.layup': text });
  onTestFinished(dispose);
  const book = text === undefined ? sample : '.';
  for (const out of ['sheet.pdf', 'sheet.html']) {
    const { code } = await laybook(folder, 'sheet', name, book, '--out', out, '--paper', paper);
    expect(code).toBe(0);
  }
  return {
    pdf: await readPdf(new Uint8Array(readFileSync(path.join(folder, 'sheet.pdf'))), `legible-${name}-${paper}`, 75),
    html: readFileSync(path.join(folder, 'sheet.html'), 'utf8'),
  };
}

const wordsOf = ({ pages }: ReadPdf): string[] => pages.flatMap(({ words }) => words.map(({ text }) => text));

describe('every letter of a sheet, labels in drawings too, is 8 pt at the least', () => {
  it.each([
    ['drip_tray', 'a4'],
    ['hatch_board', 'letter'],
    ['hatch_lid', 'a4'],
    ['instrument_panel', 'letter'],
    ['side_panel', 'a4'],
    ['sled_deck', 'letter'],
  ])('%s on %s', async (name, paper) => {
    const { pdf } = await sheet(name, undefined, paper);
    const small = pdf.pages.flatMap(({ words }) => words.filter(({ size }) => size < 7.99));
    expect(small).toEqual([]);
    // names led out of a drawing stand apart from each other
    const drawn = pdf.pages.find(({ words }) => words.some(({ text }) => text === 'Drawings'));
    const labels = (drawn?.words ?? []).filter(({ size }) => size < 9.9);
    expect(labels.length).toBeGreaterThan(5);
    for (const a of labels)
      for (const b of labels)
        if (a !== b && Math.abs(a.x - b.x) < 0.5) expect(Math.abs(a.y - b.y)).toBeGreaterThan(0.9 * a.size);
  });
});

const many = (count: number): string => `notation 1
fabric mat "Mat" {
  fibre e_glass
  layers random 450 g/m2
  roll 1250 mm by 60 m
}
recipe thick {
  quantity 2
  part { outline rectangle 400 mm by 250 mm }
  stack {
    repeat ${count} {
      ply a mat
    }
    ply last mat, rectangle 200 mm by 100 mm, centred at (50 mm, 0 mm)
    ply other mat, rectangle 200 mm by 100 mm, centred at (-80 mm, 20 mm)
  }
  process hand with polyester_laminating at 20 degC {
    lay a.1 to a.${count}, catalyst 1 % by weight
    lay last to other, catalyst 1 % by weight
    cure 24 h at 20 degC
    demould
  }
}
`;

describe('pieces that are alike', () => {
  it('share a row of the cut list and of the scales, and are told how many they are', async () => {
    const { pdf, html } = await sheet('thick', many(60));
    const words = wordsOf(pdf).join(' ');
    expect(words).toContain('60 (120 in all)');
    // by hand: 0.1 m2 of 450 g/m2 are 45 g, and sixty of them 2.7 kg
    expect(words.replace(/\s+/g, ' ')).toMatch(/45 g each, 60 together 2\.7 kg/);
    // moved in the part they are cut alike
    expect(html).toMatch(/<td>last, other<\/td><td>mat<\/td><td>2 \(4 in all\)<\/td>/);
    const cut = pdf.pages.filter((page) => page.words.some(({ text }) => text === 'sketch'));
    expect(cut).toHaveLength(1);
    expect(pdf.pages.length).toBeLessThan(9);
  });

  it('share a row of their step, where each has a square of its own', async () => {
    const { html } = await sheet('thick', many(30));
    const [, steps = ''] = html.split('<h2>Steps</h2>');
    const squares = (name: string): number =>
      (new RegExp(`<td>${name}</td>.*?</tr>`).exec(steps)?.[0].match(/box small/g) ?? []).length;
    expect(squares('a\\.1 to a\\.30')).toBe(30);
    expect(squares('last')).toBe(1);
  });

  it('are never told together where their order or their form differs', async () => {
    const { html } = await sheet(
      'thick',
      many(4)
        .replace('ply a mat', 'ply a mat\n ply b mat, rectangle 200 mm by 100 mm, centred at (0 mm, 0 mm)')
        .replace('lay a.1 to a.4', 'lay a.1 to b.4'),
    );
    expect(html).toMatch(/<td>a\.1 to a\.4<\/td><td>mat<\/td><td>4 \(8 in all\)<\/td>/);
    const [, steps = ''] = html.split('<h2>Steps</h2>');
    expect(steps.match(/<td>[ab]\.[1-4]<\/td>/g)).toHaveLength(8);
    expect(html).toMatch(/<td>b\.1 to b\.4, last, other<\/td><td>mat<\/td><td>6 \(12 in all\)<\/td>/);
  });
});

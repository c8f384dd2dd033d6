/** Tables of the build sheet on paper: a name is told whole, and what stands beside it gives way. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { folderOf, laybook } from '../harness/terminal.ts';
import { readPdf } from './export/read-pdf.ts';

it.each(['a4', 'letter'])(
  'a sketch is smaller before a name is broken, on %s',
  async (paper) => {
    const { folder, dispose } = folderOf({});
    onTestFinished(dispose);
    const file = path.join(folder, 'sheet.pdf');
    const sample = path.join(root, 'extension/sample');
    const { code } = await laybook(folder, 'sheet', 'side_panel', sample, '--paper', paper, '--out', file);
    expect(code).toBe(0);
    const { pages } = await readPdf(new Uint8Array(readFileSync(file)));
    const words = pages.flatMap((page) => page.words.map(({ text }) => text.trim()));
    for (const name of ['carbon_prepreg_200', 'nylon_85_untreated']) {
      expect(words.filter((word) => word === name).length, name).toBeGreaterThan(0);
      const parts = words.filter((word) => word.length > 8 && word !== name && name.startsWith(word));
      expect(parts, name).toEqual([]);
    }
    // no cell lies on another: of two words of a line the second begins behind the first
    for (const page of pages)
      for (const { y, x, text, size } of page.words)
        for (const other of page.words)
          if (other.y === y && other.x > x && text.trim() !== '' && other.text.trim() !== '')
            expect(other.x - x, `${text} | ${other.text}`).toBeGreaterThan(text.length * size * 0.2);
  },
  60_000,
);

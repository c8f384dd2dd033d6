/** The flat piece in the hover of a layer, and the way to the plan; only where the editor shows pictures and runs links. */
import { afterAll, describe, expect, it } from 'vitest';
import { analysisModule, type WithAnalysis } from '../../../language/analysis/module.ts';
import { hoverBook } from '../../../language/lsp/shown-book.ts';
import { hoverAt } from '../../../language/view/hover/index.ts';
import { hoversOver } from '../../../language/view/hover/over-book.ts';
import { openBook } from '../../harness/book.ts';
import { sampleFiles } from '../../harness/sample.ts';
import { areaOfPath, boxOfPath, readSvg } from '../export/read-back.ts';

const book = await openBook(sampleFiles, { modules: [analysisModule] });
afterAll(() => book.dispose());

function hover(words: string, commandLinks = true, file = 'sled_deck.layup'): string {
  const asked = { ...hoverBook(book.services as WithAnalysis), commandLinks };
  const at = (sampleFiles[file] ?? '').indexOf(words);
  const found = hoverAt(book.document(file), at + words.length - 1, hoversOver(asked));
  if (found === undefined) throw new Error(`nothing is shown at ${words}`);
  return found.markdown;
}

const picture = /!\[([^\]]*)\]\(data:image\/svg\+xml,([^|)]*)\|width=(\d+)\)/;

describe('the hover of a layer', () => {
  it('shows its flat piece, with words for whom a picture says nothing', () => {
    const markdown = hover('patch pad');
    const [, words = '', data = ''] = picture.exec(markdown) ?? [];
    expect(words).toBe('Flat piece pad, 260 mm by 180 mm');
    const elements = readSvg(decodeURIComponent(data));
    const cut = elements.find(({ attributes }) => attributes.class === 'shape closed')?.attributes.d ?? '';
    const { width, height } = boxOfPath(cut);
    expect(width / height).toBeCloseTo(260 / 180, 4);
    // corners of 40 mm: the same share is missing whatever the scale
    expect(areaOfPath(cut) / (width * height)).toBeCloseTo(1 - ((4 - Math.PI) * 40 ** 2) / (260 * 180), 4);
    // dark lines need a light ground, whatever the theme
    expect(elements.find(({ name }) => name === 'rect')?.attributes.fill).toBe('#ffffff');
  });

  it('shows darts, and stays far below what an editor cuts off', () => {
    const markdown = hover('ply outer');
    expect(picture.exec(markdown)?.[1]).toMatch(/^Flat piece outer, 1317 mm by 497 mm, \d+ darts and slits$/);
    expect(markdown.length).toBeLessThan(100_000);
  });

  it('leads to the plan of the recipe', () => {
    const [, given = ''] = /\[Show the plan\]\(command:laybook\.showPlan\?([^)]*)\)/.exec(hover('ply outer')) ?? [];
    expect(JSON.parse(decodeURIComponent(given))).toEqual([
      { uri: 'file:///book/sled_deck.layup', recipe: 'sled_deck' },
    ]);
    expect(hover('recipe sled_deck')).toContain('command:laybook.showPlan?');
  });

  it('holds neither where the editor runs no links, nor a picture of a coat', () => {
    expect(hover('ply outer', false)).not.toMatch(/data:|command:/);
    expect(hover('coat gel', true, 'drip_tray.layup')).not.toContain('data:');
    expect(hover('coat gel', true, 'drip_tray.layup')).toContain('command:laybook.showPlan?');
  });
});

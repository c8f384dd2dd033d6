/** Words that nothing takes are told of where they stand, with the nearest one. */
import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { sayText } from '../../language/view/text.ts';
import { openBook } from '../harness/book.ts';

async function told(text: string): Promise<string[]> {
  const book = await openBook({ 'a.layup': text }, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const found = await analysis.findings(book.document('a.layup'));
  book.dispose();
  return found.filter(({ rule }) => rule.startsWith('line/')).map(({ rule, message }) => `${rule} ${sayText(message)}`);
}
const inShop = (line: string): string => `shop "a" {\n  ${line}\n}\n`;
const inRecipe = (line: string): string => `recipe r {\n${line}\n}\n`;

describe('words that nothing takes', () => {
  it.each([
    [
      inShop('habit leek 5 mbar in 10 min'),
      'line/not-understood no figure and no rule takes a habit called leek: is leak meant?',
    ],
    [inShop('habit zzzzzz 5 mm'), 'line/not-understood no figure and no rule takes a habit called zzzzzz'],
    [
      inRecipe('  part {\n    outline circle 400 mm\n    zone m circle 80 mm, clampd\n  }'),
      'line/not-understood `clampd` is no clause of a zone: is clamped meant?',
    ],
    [
      inRecipe('  part {\n    outline circle 400 mm\n    cutout circle 80 mm, floof\n  }'),
      'line/not-understood `floof` is no clause of a cutout',
    ],
  ])('%s', async (text, expected) => expect(await told(text)).toEqual([expected]));

  it.each(['stack', 'part', 'load rider', 'size short'])('a lone `%s` lacks its braces', async (head) => {
    const [first] = await told(inRecipe(`  ${head}`));
    expect(first).toContain(`line/missing-brace \`${head.split(' ')[0]}\` is a block and lacks its braces: `);
  });
});

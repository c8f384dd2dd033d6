/** Whatever a recipe says, its plan and its section are drawn or say why not: never a fault, never a number that is none. */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { planOf } from '../../calc/drawing/plan/plan.ts';
import type { DrawnThings } from '../../calc/drawing/plan/thing.ts';
import { sectionOf } from '../../calc/drawing/section/section.ts';
import { type Figure, isKnown } from '../../calc/figure/index.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { screenSvg } from '../../language/export/svg.ts';
import { pictureOf } from '../../language/view/drawing/picture.ts';
import { show } from '../../language/view/text.ts';
import { openBook } from '../harness/book.ts';
import { readPage } from '../harness/rule-page.ts';
import { sampleFiles } from '../harness/sample.ts';
import { placeFragment } from '../harness/standard-book.ts';
import { badInputs } from './bad-inputs.ts';

const book = await openBook<AnalysisServices>(
  { ...placeFragment('').files, ...sampleFiles, 'fragment.layup': '' },
  { modules: [analysisModule], open: ['fragment.layup'] },
);
afterAll(() => book.dispose());

/** Draws all recipes of a file; how many drawings came of it. */
function drawAll(file: string): number {
  const { analysis } = book.services;
  let drawn = 0;
  for (const { model } of analysis.entries(book.document(file))) {
    if (model.kind !== 'recipe') continue;
    for (const recipe of model.recipes) {
      for (const [view, draw] of [
        ['plan', planOf],
        ['section', sectionOf],
      ] as const) {
        const drawing: Figure<DrawnThings> = draw(analysis.bench(recipe), (words) => show(words), { key: true });
        if (isKnown(drawing)) {
          drawn++;
          const style = { units: 'si' } as const;
          const picture = pictureOf(drawing.value, { uri: file, view, recipe, style, linesOf: () => undefined });
          expect(`${JSON.stringify(picture)}${screenSvg(drawing.value)}`).not.toMatch(/NaN|Infinity|null|undefined/);
          expect(new Set(picture.groups.map(({ key }) => key)).size).toBe(picture.groups.length);
        }
      }
    }
  }
  return drawn;
}

describe('drawings of', () => {
  it('every recipe of the sample, in all sizes', () => {
    for (const file of Object.keys(sampleFiles)) {
      const recipes = (sampleFiles[file] ?? '').match(/^recipe \w/gm)?.length ?? 0;
      expect(drawAll(file), file).toBeGreaterThanOrEqual(recipes);
    }
  });

  it('every fragment of the pages of rules', { timeout: 120_000 }, async () => {
    const folder = path.join(import.meta.dirname, '../../language/rules');
    const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.md'));
    let drawn = 0;
    for (const file of pages.sort()) {
      for (const { code } of readPage(path.join(folder, file)).fragments) {
        await book.edit('fragment.layup', placeFragment(code).files['fragment.layup'] ?? '');
        drawn += drawAll('fragment.layup');
      }
    }
    expect(drawn).toBeGreaterThan(500);
  });

  it('recipes that nobody should write', { timeout: 120_000 }, async () => {
    for (const { text } of Object.values(badInputs).flat()) {
      const bad = text();
      // the time of a long text is that of reading it, which has tests of its own
      if (bad.length > 20_000) continue;
      await book.edit('fragment.layup', bad);
      drawAll('fragment.layup');
    }
  });
});

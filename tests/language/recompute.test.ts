import { expect, it } from 'vitest';
import { cost } from '../../calc/cost/cost.figure.ts';
import { counters } from '../../calc/figure/index.ts';
import { layerMass, mass } from '../../calc/laminate/mass.figure.ts';
import { lowerCounters } from '../../language/analysis/entries.ts';
import { findingCounters } from '../../language/analysis/kept-findings.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { openBook, type TestBook, type Work } from '../harness/book.ts';
import { standardBlocks, standardMaterials, standardShop, standardTools } from '../harness/standard-book.ts';

/* An edit recomputes what it reaches and nothing else: counted, not timed. */

const recipe = (i: number): string =>
  [`recipe deck_${i} "Deck ${i}" {`, ...Object.values(standardBlocks), '  expect mass <= 3 kg', '}', ''].join('\n');

const files: Readonly<Record<string, string>> = {
  'shop.layup': standardShop,
  'tools.layup': standardTools,
  'materials.layup': standardMaterials,
  ...Object.fromEntries(Array.from({ length: 50 }, (_, i) => [`deck_${i}.layup`, recipe(i)])),
};

const open = (): Promise<TestBook<AnalysisServices>> =>
  openBook<AnalysisServices>(files, { modules: [analysisModule], open: ['deck_0.layup', 'materials.layup'] });

interface Done extends Work {
  readonly computed: number;
  readonly lowered: number;
  readonly checked: number;
}

async function doing(book: TestBook<AnalysisServices>, work: () => Promise<void>): Promise<Done> {
  const before = { ...counters, ...lowerCounters, checked: findingCounters.checked };
  book.takeWork();
  await work();
  return {
    ...book.takeWork(),
    computed: counters.computed - before.computed,
    lowered: lowerCounters.lowered - before.lowered,
    checked: findingCounters.checked - before.checked,
  };
}

it('an edit of one recipe of fifty reads, lowers and checks that one', async () => {
  const book = await open();
  const done = await doing(book, () =>
    book.edit('deck_0.layup', recipe(0).replace('wrap onto body by 25 mm', 'wrap onto body by 30 mm')),
  );
  expect(done).toMatchObject({
    parsed: ['deck_0.layup'],
    linked: ['deck_0.layup'],
    validated: ['deck_0.layup'],
    lowered: 1,
    checked: 1,
  });
  expect(done.computed).toBeGreaterThan(0);
});

it('an edit of a comment, and what a formatter does, computes no figure', async () => {
  const book = await open();
  for (const text of [
    recipe(0).replace('quantity 2', 'quantity 2 // both sides'),
    `// Of the season before.\n${recipe(0)}`,
    recipe(0).replaceAll('    ', '\t'),
    `${recipe(0)}\n\n`,
  ]) {
    const { computed } = await doing(book, () => book.edit('deck_0.layup', text));
    expect(computed, text.slice(0, 60)).toBe(0);
  }
});

it('what is undone, and what is deleted and typed again, computes no figure', async () => {
  const book = await open();
  const typed = ['core body foam_80 2 mm', 'core body foam_80 ', 'core body foam_80 25 mm'];
  for (const line of typed) await book.edit('deck_0.layup', recipe(0).replace('core body foam_80 20 mm', line));
  const { computed, checked } = await doing(book, () => book.edit('deck_0.layup', recipe(0)));
  expect(computed).toBe(0);
  expect(checked).toBeLessThanOrEqual(1);
});

it('entries that stand further down for an edit above them are not lowered and not checked again', async () => {
  const book = await open();
  const two = `${recipe(100)}\n${recipe(101)}`;
  await book.edit('deck_0.layup', two);
  const { lowered, checked } = await doing(book, () =>
    book.edit('deck_0.layup', two.replace('quantity 2', 'quantity 3\n')),
  );
  expect(lowered).toBe(1);
  expect(checked).toBe(1);
});

it('a price reaches costs and no masses', async () => {
  const book = await open();
  const { analysis } = book.services;
  const bench = () => {
    const [lowered] = analysis.entries(book.document('deck_0.layup'));
    if (lowered?.model.kind !== 'recipe' || lowered.model.recipes[0] === undefined) throw new Error('no recipe');
    return analysis.bench(lowered.model.recipes[0]);
  };
  const before = { mass: bench().ask(mass), layer: bench().ask(layerMass, 'body'), cost: bench().ask(cost) };
  await book.edit('materials.layup', standardMaterials.replace('price 33 EUR/m2', 'price 34 EUR/m2'));
  expect(bench().ask(mass)).toBe(before.mass);
  expect(bench().ask(layerMass, 'body')).toBe(before.layer);
  expect(bench().ask(cost)).not.toEqual(before.cost);
});

it('an edit of a process reaches the recipes whose process is like one that is like it', async () => {
  const wait = (hours: number): string => `recipe first {\n  process hand {\n    wait ${hours} h\n  }\n}\n`;
  const book = await openBook<AnalysisServices>(
    {
      'first.layup': wait(2),
      'second.layup': 'recipe second {\n  process hand like first {\n    weigh\n  }\n}\n',
      'third.layup': 'recipe third {\n  process hand like second {\n    check "Flat."\n  }\n}\n',
    },
    { modules: [analysisModule], open: ['third.layup'] },
  );
  const waits = (): unknown => {
    const [{ model } = { model: undefined }] = book.services.analysis.entries(book.document('third.layup'));
    const step = model?.kind === 'recipe' ? model.recipes[0]?.process?.steps[0] : undefined;
    const [said] = step?.arguments ?? [];
    return said?.kind === 'amount' ? said.amount.si : undefined;
  };
  expect(waits()).toBe(2 * 3600);
  await book.edit('first.layup', wait(3));
  expect(waits()).toBe(3 * 3600);
});

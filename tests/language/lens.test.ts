/** The line of lenses above a recipe: what it tells, what it opens, and that it stays. */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { counters } from '../../calc/figure/index.ts';
import { reportOf } from '../../calc/report.ts';
import { type ReportParams, type ReportResult, reportRequest } from '../../language/protocol/report.ts';
import { figureOf, showFigure } from '../../language/view/figures.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import { type FigureBook, noMark, openFigureBook, type ShownLens } from '../harness/shown-figures.ts';

const deck = 'sled_deck.layup';
const deckText = sampleFiles[deck] ?? '';
const head = deckText.split('\n').findIndex((line) => line.startsWith('recipe '));

const opened: FigureBook[] = [];
async function open(texts = sampleFiles): Promise<FigureBook> {
  const book = await openFigureBook(texts);
  opened.push(book);
  return book;
}
afterAll(() => {
  for (const book of opened) book.dispose();
});

/** Titles without what only holds places. */
const words = (lenses: readonly ShownLens[]): string[] =>
  lenses.map(({ title }) => title.replaceAll(noMark, '').replace('\u200b', ''));
/** Titles without the mark behind them, and without the count of findings, which is always that of now. */
const figures = (lenses: readonly ShownLens[]): string[] =>
  words(lenses).map((title) => title.replace(/\?$/, '').replace(/^(open findings) .*/, '$1'));

describe('what it tells', () => {
  it('five figures of the recipe as the report has them, in their order, above its head', async () => {
    const book = await open();
    const shelf = book.services.analysis.shelf();
    const recipe = shelf.recipe('sled_deck');
    if (recipe === undefined) throw new Error('the sample has lost its deck');
    const report = reportOf(recipe, shelf);
    const told = (name: string) => showFigure(figureOf(report.figures, name));
    const lenses = await book.lenses(deck);
    expect(words(lenses)).toEqual([
      `mass ${told('mass')}`,
      `thickness ${told('thickness')}`,
      `resin to mix ${told('resin_to_mix')}`,
      `cost ${told('cost')}`,
      `open findings ${book.document(deck).diagnostics?.length}`,
      'plan',
    ]);
    expect(lenses.map(({ line }) => line)).toEqual(lenses.map(() => head));
  });

  it('counts the findings of its own recipe', async () => {
    const both = `${deckText}\nrecipe other {\n  part {\n    outlin\n  }\n}\n`;
    const book = await open({ ...sampleFiles, [deck]: both });
    const count = (lenses: readonly ShownLens[]): number => Number(/(\d+)/.exec(words(lenses)[4] ?? '')?.[1]);
    const lenses = await book.lenses(deck);
    const [first, second] = [lenses.slice(0, 6), lenses.slice(6)].map(count);
    expect(lenses.length).toBe(12);
    expect((first ?? 0) + (second ?? 0)).toBe(book.document(deck).diagnostics?.length);
    expect(second).toBeGreaterThan(0);
  });

  it('says so where a figure cannot be told, in its place', async () => {
    const text = deckText.replace('core body foam_80 20 mm', 'core body foam_80 ?');
    const lenses = await (await open({ ...sampleFiles, [deck]: text })).lenses(deck);
    expect(words(lenses).slice(0, 2)).toEqual(['mass unknown', 'thickness unknown']);
    expect(lenses.length).toBe(6);
  });

  it('is switched off by its setting', async () => {
    const book = await open();
    book.setting({ lens: false });
    expect(await book.lenses(deck)).toEqual([]);
  });

  it('computes nothing that is known', async () => {
    const book = await open();
    await book.lenses(deck);
    const before = counters.computed;
    await book.lenses(deck);
    expect(counters.computed).toBe(before);
  });
});

describe('how it stays', () => {
  it('is as wide whatever the figures are; an editor that trims titles leaves it so', async () => {
    const book = await open();
    const widths = (lenses: readonly ShownLens[]): number[] => lenses.map(({ title }) => title.trim().length);
    const before = widths(await book.lenses(deck));
    for (const thickness of ['3 mm', '8.5 mm', '60 mm', '?', '12']) {
      await book.edit(deck, deckText.replace('core body foam_80 20 mm', `core body foam_80 ${thickness}`));
      expect(widths(await book.lenses(deck))).toEqual(before);
    }
  });

  it('keeps its figures and its place while any line is half typed, its own head too', async () => {
    const book = await open();
    const before = await book.lenses(deck);
    const lines = deckText.split('\n');
    const typed = lines.flatMap((line, i) => (line.trim() !== '' && i >= head ? [i] : []));
    let torn = 0;
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...typed), fc.double({ min: 0, max: 1, noNaN: true }), async (index, share) => {
        const line = lines[index] ?? '';
        const indent = line.length - line.trimStart().length;
        const cut = line.slice(0, indent + 1 + Math.floor(share * (line.length - indent - 1)));
        await book.edit(deck, [...lines.slice(0, index), cut, ...lines.slice(index + 1)].join('\n'));
        const now = await book.lenses(deck);
        const unread = await book.isUnread(deck, index);
        expect(now.map(({ line: at }) => at)).toEqual(before.map(({ line: at }) => at));
        if (unread) {
          torn++;
          expect(figures(now)).toEqual(figures(before));
          expect(now.map(({ argument }) => argument)).toEqual(before.map(({ argument }) => argument));
        }
        await book.edit(deck, deckText);
        await book.leaveLine();
        expect(await book.lenses(deck)).toEqual(before);
      }),
      { numRuns: 80, seed: 5 },
    );
    expect(torn).toBeGreaterThan(20);
  });

  it('says that its figures are old', async () => {
    const book = await open();
    await book.lenses(deck);
    await book.edit(deck, deckText.replace('core body foam_80 20 mm', 'core body foam_80 20'));
    const marked = words(await book.lenses(deck)).map((title) => title.endsWith('?'));
    expect(marked).toEqual([true, true, true, true, false, false]);
  });
});

describe('what it opens', () => {
  const servers: MemoryServer[] = [];
  const serve = async (...args: Parameters<typeof startMemoryServer>): Promise<MemoryServer> => {
    const server = await startMemoryServer(...args);
    servers.push(server);
    return server;
  };
  afterAll(() => {
    for (const server of servers) server.stop();
  });

  it('each lens a part of the report, at its heading, or the next finding, or the plan', async () => {
    const server = await serve(sampleFiles);
    await server.open(deck, deckText);
    await server.settled();
    const lenses: readonly { command: { command: string; arguments: readonly unknown[] } }[] =
      await server.client.sendRequest('textDocument/codeLens', { textDocument: { uri: server.uriOf(deck) } });
    const headings: string[] = [];
    for (const { command } of lenses.slice(0, 4)) {
      expect(command.command).toBe('laybook.showReport');
      const { markdown, line } = await server.client.sendRequest<ReportResult>(reportRequest, command.arguments[0]);
      headings.push(markdown.split('\n')[line] ?? '');
    }
    expect(headings).toEqual(['## Layers', '## Layers', '## Resin', '## Cost of one part']);
    expect(lenses[4]?.command).toMatchObject({
      command: 'laybook.nextFinding',
      arguments: [{ uri: server.uriOf(deck), line: head }],
    });
    expect(lenses[5]?.command).toMatchObject({
      command: 'laybook.showPlan',
      arguments: [{ uri: server.uriOf(deck), recipe: 'sled_deck' }],
    });
  });

  it('the report of a size, and a sentence where there is no such recipe', async () => {
    const server = await serve(sampleFiles);
    const ask = (more: Partial<ReportParams>): Promise<ReportResult> =>
      server.client.sendRequest(reportRequest, { uri: server.uriOf(deck), recipe: 'sled_deck', ...more });
    expect((await ask({})).markdown).toMatch(/^# sled\\_deck: Rescue sled deck, revision 4, 12 parts\n/);
    expect((await ask({ size: 'short' })).markdown).toMatch(/^# .*, size short, .*4 parts\n/);
    expect(await ask({ recipe: 'sle<d' })).toEqual({ markdown: 'There is no recipe `sled` in this file.\n', line: 0 });
  });

  it('is asked for again when figures change outside of the file, and only then', async () => {
    const server = await serve(sampleFiles, {
      capabilities: { workspace: { inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } } },
    });
    const asked: string[] = [];
    for (const view of ['inlayHint', 'codeLens']) {
      server.client.onRequest(`workspace/${view}/refresh`, () => {
        asked.push(view);
        return null;
      });
    }
    const textDocument = { uri: server.uriOf(deck) };
    const range = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
    const look = async (): Promise<string[]> => {
      await server.settled();
      await server.client.sendRequest('textDocument/inlayHint', { textDocument, range });
      await server.client.sendRequest('textDocument/codeLens', { textDocument });
      return asked.splice(0);
    };
    const materials = sampleFiles['materials.layup'] ?? '';
    await server.open(deck, deckText);
    await server.open('materials.layup', materials);
    await look();
    await server.change(deck, { text: deckText.replace('foam_80 20 mm', 'foam_80 22 mm') });
    expect(await look()).toEqual([]);
    await server.change('materials.layup', { text: `${materials}\n// nothing new\n` });
    expect(await look()).toEqual([]);
    // costs are in the lens, not beside the lines
    await server.change('materials.layup', { text: materials.replace('price 7.40 EUR/m2', 'price 8.40 EUR/m2') });
    expect(await look()).toEqual(['codeLens']);
    await server.change('materials.layup', { text: materials.replace('density 80 kg/m3', 'density 90 kg/m3') });
    expect(await look()).toEqual(['inlayHint', 'codeLens']);
    await server.client.sendNotification('workspace/didChangeConfiguration', {
      settings: { laybook: { units: 'us' } },
    });
    expect(await look()).toEqual(['inlayHint', 'codeLens']);
    expect(server.log).toEqual([]);
  });
});

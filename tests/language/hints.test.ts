/** Figures beside the lines: what they tell, where they stand, that they stay, and that nothing is computed twice. */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { counters } from '../../calc/figure/index.ts';
import { layerMass } from '../../calc/laminate/mass.figure.ts';
import { reportOf } from '../../calc/report.ts';
import { figureOf, showFigure } from '../../language/view/figures.ts';
import { sampleFiles } from '../harness/sample.ts';
import { type FigureBook, openFigureBook, type ShownHint } from '../harness/shown-figures.ts';

const files = sampleFiles;
const deck = 'sled_deck.layup';
const deckText = files[deck] ?? '';

const opened: FigureBook[] = [];
async function open(texts: Readonly<Record<string, string>> = files): Promise<FigureBook> {
  const book = await openFigureBook(texts);
  opened.push(book);
  return book;
}
afterAll(() => {
  for (const book of opened) book.dispose();
});

const lineOf = (text: string, words: string): number => {
  const found = text.split('\n').findIndex((line) => line.includes(words));
  if (found < 0) throw new Error(`no line has "${words}"`);
  return found;
};
const at = (hints: readonly ShownHint[], text: string, words: string): ShownHint | undefined =>
  hints.find(({ line }) => line === lineOf(text, words));

describe('what they tell', () => {
  it('of each layer: wet mass and thickness so far, as the report has them', async () => {
    const book = await open();
    const shelf = book.services.analysis.shelf();
    const recipe = shelf.recipe('sled_deck');
    if (recipe === undefined) throw new Error('the sample has lost its deck');
    const hints = book.hints(deck);
    const { layers } = reportOf(recipe, shelf);
    expect(layers.length).toBe(6);
    for (const { laid, figures } of layers) {
      const told = ['layer_mass', 'height_so_far'].map((name) => showFigure(figureOf(figures, name)));
      expect(at(hints, deckText, `${laid.layer.kind} ${laid.name} `)?.words).toBe(`${told[0]} · to ${told[1]}`);
    }
  });

  it('of each step: hands and waiting; nothing where there is neither', async () => {
    const hints = (await open()).hints(deck);
    expect(at(hints, deckText, 'hold 24 h')?.words).toBe('24 h waiting');
    expect(at(hints, deckText, 'leak test')?.words).toBe('10 min, 10 min waiting');
    expect(at(hints, deckText, 'weigh')?.words).toBe('3 min');
    expect(at(hints, deckText, 'expect mass')).toBeUndefined();
    expect(at(hints, deckText, 'without pad')).toBeUndefined();
  });

  it('over all copies of a line that is laid more than once', async () => {
    const stack = '    repeat 3 {\n      ply mat mat_300 at 0 deg\n    }\n    mirror\n';
    const text = `recipe r {\n  part {\n    outline rectangle 1000 mm by 500 mm\n  }\n  stack from tool t {\n${stack}  }\n  process hand with epoxy_slow at 23 degC {\n    lay stack\n  }\n}\ntool t {\n  flat 2 m by 1 m\n}\n`;
    const book = await open({
      'materials.layup': files['materials.layup'] ?? '',
      'shop.layup': files['shop.layup'] ?? '',
      'r.layup': text,
    });
    const shelf = book.services.analysis.shelf();
    const recipe = shelf.recipe('r');
    if (recipe === undefined) throw new Error('no recipe');
    const masses = reportOf(recipe, shelf).layers.map(({ figures }) => figureOf(figures, 'layer_mass')?.figure);
    expect(masses.length).toBe(6);
    const total = masses.reduce(
      (sum, mass) => sum + (mass !== undefined && 'value' in mass ? mass.value : Number.NaN),
      0,
    );
    const hint = at(book.hints('r.layup'), text, 'ply mat');
    expect(hint?.words).toMatch(/^[\d.]+ k?g in 6 · to [\d.]+ mm$/);
    const [, number = '', unit] = /^([\d.]+) (k?g)/.exec(hint?.words ?? '') ?? [];
    expect(Number(number) / (unit === 'g' ? 1000 : 1)).toBeCloseTo(total, 2);
  });

  it('the kinds that are switched on, each by itself', async () => {
    const book = await open();
    const none = { mass: false, thickness: false, cost: false, minutes: false, amount: false };
    const words = (hints: object, line: string): string | undefined => {
      book.setting({ hints: { ...none, ...hints } });
      return at(book.hints(deck), deckText, line)?.words;
    };
    expect(words({}, 'ply outer')).toBeUndefined();
    expect(words({ mass: true }, 'ply outer')).toMatch(/^[\d.]+ g$/);
    expect(words({ thickness: true }, 'ply outer')).toMatch(/^to [\d.]+ mm$/);
    expect(words({ cost: true }, 'ply outer')).toMatch(/^[\d.]+ EUR$/);
    expect(words({ minutes: true }, 'tape sealant_12')).toMatch(/^[\d.]+ min$/);
    expect(words({ amount: true }, 'tape sealant_12')).toMatch(/^tape \d+ mm$/);
    expect(words({ mass: true, thickness: true, cost: true }, 'tape sealant_12')).toBeUndefined();
  });

  it('with the reasons, and what is missing where nothing can be told', async () => {
    const text = deckText.replace('core body foam_80 20 mm', 'core body foam_80 ?');
    const book = await open({ ...files, [deck]: text });
    const hints = book.hints(deck);
    expect(at(hints, text, 'core body')?.words).toBe('mass ? · thickness ?');
    expect(at(hints, text, 'core body')?.tooltips[0]).toMatch(/thickness of body/);
    expect(at(hints, text, 'ply inner')?.words).toMatch(/^[\d.]+ g · thickness \?$/);
    expect(at(hints, text, 'ply inner')?.tooltips[0]).toMatch(/dry and .* of resin/);
    expect(hints.filter(({ old }) => old)).toEqual([]);
  });
});

describe('where they stand', () => {
  it('behind the words of the line, in front of its comment and of lines that go on with it', async () => {
    const text = deckText
      .replace('at 45 deg, over mount', 'at 45 deg, over mount   // 8 mm bolts "here"')
      .replace('strip keel', '/* glued in */ strip keel');
    const book = await open({ ...files, [deck]: text });
    const hints = book.hints(deck);
    const patch = at(hints, text, 'patch pad');
    expect(patch?.character).toBe(text.split('\n')[patch?.line ?? 0]?.indexOf('   //'));
    expect(at(hints, text, 'strip keel')?.words).toMatch(/^[\d.]+ g/);
    const bolts = at(hints, text, 'insert bolts');
    expect(bolts?.character).toBe(text.split('\n')[bolts?.line ?? 0]?.length);
    expect(at(hints, text, 'Chamfer the lower edge')).toBeUndefined();
  });
});

/** The lines of the deck that carry figures. */
const inside = deckText
  .split('\n')
  .flatMap((line, i) =>
    /^ {4,}[a-z]/.test(line) && i > lineOf(deckText, 'stack from') && i < lineOf(deckText, 'load rider') ? [i] : [],
  );

/** A line on its way: cut somewhere, with something slipped in, or without a stretch of it. */
const halfTyped = fc.record({
  line: fc.constantFrom(...inside),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.constantFrom(1, 4, 12, 1000),
  put: fc.constantFrom('', '', '', ' at', ',', '"', '(', '{', '}', ' %', ' 3', 'x', ' ply', '/*'),
});

function edited(
  text: string,
  { line, at: share, length, put }: typeof halfTyped extends fc.Arbitrary<infer T> ? T : never,
): string {
  const lines = text.split('\n');
  const before = lines[line] ?? '';
  const indent = before.length - before.trimStart().length;
  // one letter of it stays, else the line is gone
  const start = indent + 1 + Math.floor(share * (before.length - indent - 1));
  lines[line] = before.slice(0, start) + put + before.slice(start + length);
  return lines.join('\n');
}

const codeEnd = (line: string): number => line.replace(/\s*\/\/.*$/, '').trimEnd().length;

describe('while a line is half typed', () => {
  it('the figures of all other lines stay, and so does its own; those that may not hold are marked', async () => {
    const book = await open();
    const before = book.hints(deck);
    let torn = 0;
    await fc.assert(
      fc.asyncProperty(halfTyped, async (change) => {
        const text = edited(deckText, change);
        await book.edit(deck, text);
        const lines = text.split('\n');
        const now = book.hints(deck);
        const unread = await book.isUnread(deck, change.line);
        // none comes, none goes
        expect(now.map(({ line }) => line)).toEqual(before.map(({ line }) => line));
        for (const [i, hint] of now.entries()) {
          if (hint.line === change.line) continue;
          expect(hint.character).toBe(codeEnd(lines[hint.line] ?? ''));
          if (unread) expect(hint.words).toBe(before[i]?.words);
        }
        if (unread) torn++;
        await book.edit(deck, deckText);
        expect(book.hints(deck)).toEqual(before);
      }),
      { numRuns: 120, seed: 20261125 },
    );
    expect(torn).toBeGreaterThan(40);
  });

  it('says that they are old, in the text and in words', async () => {
    const book = await open();
    const before = book.hints(deck);
    const text = deckText.replace('core body foam_80 20 mm', 'core body foam_80 20');
    await book.edit(deck, text);
    const hint = at(book.hints(deck), text, 'core body');
    expect(hint?.old).toBe(true);
    expect(hint?.words).toBe(at(before, deckText, 'core body')?.words);
    expect(hint?.tooltips[0]).toMatch(/^Old: /);
    expect(at(book.hints(deck), text, 'hold 24 h')?.old).toBe(false);
    await book.edit(deck, deckText.replace('foam_80 20 mm', 'foam_80 25 mm'));
    const mended = at(book.hints(deck), text, 'core body');
    expect(mended?.old).toBe(false);
    expect(mended?.words).not.toBe(hint?.words);
  });

  it('what is written to its end is told, though another line is broken', async () => {
    const book = await open();
    book.hints(deck);
    const broken = deckText.replace('patch pad biax_440 at 45 deg, over mount', 'patch pad biax_440 at');
    await book.edit(deck, broken);
    book.hints(deck);
    const text = broken.replace('hold 24 h at 23 degC', 'hold 30 h at 23 degC');
    await book.edit(deck, text);
    const hint = at(book.hints(deck), text, 'hold 30 h');
    expect([hint?.words, hint?.old]).toEqual(['30 h waiting', false]);
  });

  it('a name that there is not takes no figure away that does not hang on it', async () => {
    const book = await open();
    const before = book.hints(deck);
    const text = deckText.replace('patch pad biax_440', 'patch pad biax_44').replace('hold 24 h', 'hold 25 h');
    await book.edit(deck, text);
    const hints = book.hints(deck);
    expect(at(hints, text, 'patch pad')).toMatchObject({ old: true, words: at(before, deckText, 'patch pad')?.words });
    expect(at(hints, text, 'hold 25 h')).toMatchObject({ old: false, words: '25 h waiting' });
    expect(at(hints, text, 'ply outer')).toMatchObject({ old: false });
  });

  it('lines move with their text, whatever is put in front of them', async () => {
    const book = await open();
    const before = book.hints(deck);
    await book.edit(deck, `// one\n\n${deckText}`);
    expect(book.hints(deck).map(({ line }) => line)).toEqual(before.map(({ line }) => line + 2));
    await book.edit(deck, deckText.replace('recipe sled_deck', '\n\nrecip sled_deck'));
    const headless = book.hints(deck);
    expect(headless.map(({ line, words }) => [line, words])).toEqual(
      before.map(({ line, words }) => [line + 2, words]),
    );
    expect(headless.every(({ old }) => old)).toBe(true);
  });
});

describe('what is computed', () => {
  const count = async (work: () => Promise<unknown> | unknown): Promise<number> => {
    const before = counters.computed;
    await work();
    return counters.computed - before;
  };

  it('nothing when they are asked for again, nor after an edit that says nothing else', async () => {
    const book = await open();
    book.setting({ hints: { mass: true, thickness: true, cost: true, minutes: true, amount: true } });
    expect(await count(() => book.hints(deck))).toBeGreaterThan(0);
    expect(await count(() => book.hints(deck))).toBe(0);
    await book.edit(deck, deckText.replace('revision 4', 'revision 4 // the fourth'));
    expect(await count(() => book.hints(deck))).toBe(0);
  });

  it('nothing of a recipe that an edit did not touch, in the same file or another', async () => {
    const tray = files['drip_tray.layup'] ?? '';
    const both = `${tray}\n${deckText.replace(/^notation 1\n/, '')}`;
    const apart = await open(files);
    const rest = Object.fromEntries(
      Object.entries(files).filter(([name]) => name !== deck && name !== 'drip_tray.layup'),
    );
    const together = await open({ ...rest, 'both.layup': both });
    apart.hints('drip_tray.layup');
    apart.hints(deck);
    together.hints('both.layup');
    const change = (text: string): string => text.replace('core body foam_80 20 mm', 'core body foam_80 21 mm');
    const alone = await count(async () => {
      await apart.edit(deck, change(deckText));
      apart.hints(deck);
    });
    const beside = await count(async () => {
      await together.edit('both.layup', change(both));
      together.hints('both.layup');
    });
    expect(alone).toBeGreaterThan(0);
    expect(beside).toBe(alone);
    expect(await count(() => apart.hints('drip_tray.layup'))).toBe(0);
  });

  it('costs but no masses when a price changes', async () => {
    const book = await open();
    book.setting({ hints: { cost: true } });
    const before = book.hints(deck);
    const bench = () => {
      const recipe = book.services.analysis.shelf().recipe('sled_deck');
      if (recipe === undefined) throw new Error('no deck');
      return book.services.analysis.bench(recipe);
    };
    const mass = bench().ask(layerMass, 'outer');
    await book.edit(
      'materials.layup',
      (files['materials.layup'] ?? '').replace('price 7.40 EUR/m2', 'price 8.40 EUR/m2'),
    );
    const after = book.hints(deck);
    expect(bench().ask(layerMass, 'outer')).toBe(mass);
    expect(at(after, deckText, 'ply outer')?.words).not.toBe(at(before, deckText, 'ply outer')?.words);
    expect(at(after, deckText, 'core body')?.words).toBe(at(before, deckText, 'core body')?.words);
  });
});

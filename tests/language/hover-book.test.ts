/** Hovers that tell figures: of a layer, a step, a material, a rule and a recipe. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { analysisModule, type WithAnalysis } from '../../language/analysis/module.ts';
import { hoverBook } from '../../language/lsp/shown-book.ts';
import type { HoverBook } from '../../language/view/hover/book.ts';
import { hoverAt } from '../../language/view/hover/index.ts';
import { hoversOver } from '../../language/view/hover/over-book.ts';
import type { Style } from '../../language/view/text.ts';
import { openBook, type TestBook } from '../harness/book.ts';
import { readMarks } from '../harness/marks.ts';

const sample = path.resolve(import.meta.dirname, '../../extension/sample');
const files = Object.fromEntries(
  readdirSync(sample, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.layup'))
    .map((file) => [file.replaceAll(path.sep, '/'), readFileSync(path.join(sample, file), 'utf8')]),
);
const opened: TestBook[] = [];
const open = async (texts: Readonly<Record<string, string>>): Promise<TestBook> => {
  const book = await openBook(texts, { modules: [analysisModule] });
  opened.push(book);
  return book;
};
const workshop = await open(files);
afterAll(() => {
  for (const book of opened) book.dispose();
});

interface Shown {
  readonly markdown: string;
  readonly about: string;
}

function hoverOf(book: TestBook, file: string, offset: number, units?: Style['units']): Shown | undefined {
  const document = book.document(file);
  const asked = hoverBook(book.services as WithAnalysis);
  const styled: HoverBook = units === undefined ? asked : { ...asked, style: () => ({ units }) };
  const found = hoverAt(document, offset, hoversOver(styled));
  return found && { markdown: found.markdown, about: document.textDocument.getText().slice(found.start, found.end) };
}

/** Hover of the sample at `<|>`, which stands in a stretch of the text. */
function inSample(file: string, marked: string, units?: Style['units']): string {
  const {
    text,
    cursors: [cursor = 0],
  } = readMarks(marked);
  const at = (files[file] ?? '').indexOf(text);
  if (at < 0) throw new Error(`${file} has no "${text}"`);
  const found = hoverOf(workshop, file, at + cursor, units);
  if (found === undefined) throw new Error(`nothing is shown at ${marked}`);
  return found.markdown;
}

/** The cell of a row of a table, by the words that the row begins with. */
const cell = (markdown: string, row: string): string | undefined =>
  markdown
    .split('\n')
    .find((line) => line.startsWith(`| ${row} |`))
    ?.split('|')[2]
    ?.trim();

describe('a layer', () => {
  const markdown = inSample('sled_deck.layup', 'ply in<|>ner triax_680');

  it('tells its masses, thickness, share and cost', () => {
    // 0.4788 m2 of 680 g/m2 (280 + 200 + 200), the outline being 1.18 m by 0.42 m less its corners of 140 mm: (4 - pi) r2
    const dry = (1.18 * 0.42 - (4 - Math.PI) * 0.14 ** 2) * 680;
    expect(cell(markdown, 'dry mass')).toBe(`${Math.round(dry)} g`);
    expect(cell(markdown, 'piece to cut')).toBe('1180 mm by 420 mm');
    // 52 % of E-glass by volume, 2.56 g/cm3: t = w / (rho V)
    expect(cell(markdown, 'thickness')).toBe(`${((680 / (2.56e6 * 0.52)) * 1000).toFixed(3)} mm`);
    expect(cell(markdown, 'share of the part')).toMatch(/^\d+(\.\d+)? %$/);
    expect(cell(markdown, 'cost')).toMatch(/^\d+\.\d\d EUR$/);
  });

  it('begins with a sentence, and says how it is computed with sources and places', () => {
    expect(markdown.split('\n')[0]).toMatch(
      /^\*\*inner\*\* is a ply of triax\\_680; it weighs [\d.]+ g wet, [\d.]+ % of the part\.$/,
    );
    expect(markdown).toContain('The wet mass is computed so:\n\n- ');
    expect(markdown).toMatch(/\n {4}- /);
    expect(markdown).toContain('source: Hull and Clyne 1996');
    expect(markdown).toMatch(/\[sled\\_deck\.layup:\d+\]\(file:\/\/\/book\/sled_deck\.layup#L\d+\)/);
  });

  it('is shown at its first word with the meaning of it, at its name, and where it is spoken of', () => {
    const atWord = inSample('sled_deck.layup', 'p<|>ly inner triax_680');
    expect(atWord.startsWith(markdown)).toBe(true);
    expect(atWord).toContain('One piece of cloth');
    const outer = inSample('sled_deck.layup', 'ply out<|>er triax_680');
    expect(inSample('sled_deck.layup', 'lay ou<|>ter to body')).toBe(outer);
  });

  it('is told in the units of the reader', () => {
    const us = inSample('sled_deck.layup', 'ply in<|>ner triax_680', 'us');
    expect(cell(us, 'dry mass')).toMatch(/ oz av$/);
    expect(cell(us, 'piece to cut')).toMatch(/^46\.5 in by 16\.5 in$/);
    expect(cell(inSample('sled_deck.layup', 'ply in<|>ner triax_680', 'both'), 'dry mass')).toMatch(
      / g \([\d.]+ oz av\)$/,
    );
  });

  it('that is laid several times says so, and what all of them weigh', async () => {
    const recipe = `recipe r "r" {
  part {
    outline rectangle 600 mm by 500 mm
  }
  stack from tool t {
    repeat 3 {
      ply mat biax_440 at 45 deg
    }
  }
  process infusion with epoxy_infusion_slow at 23 degC {
  }
}
tool t {
  flat 2 m by 2 m
}
`;
    const book = await open({ 'a.layup': recipe });
    const { markdown: told } = hoverOf(book, 'a.layup', recipe.indexOf('mat biax') + 1) ?? { markdown: '' };
    expect(told).toMatch(/laid 3 times/);
    // biax_440 of the stock library holds 440 g/m2 of fibre; 0.3 m2 of it, from one lane of the roll
    expect(cell(told, 'dry mass')).toBe('132 g');
    const one = Number(/it weighs ([\d.]+) g wet/.exec(told)?.[1]);
    const all = Number(/All 3 together weigh ([\d.]+) g/.exec(told)?.[1]);
    expect(Math.abs(all - 3 * one)).toBeLessThan(2);
  });

  it('of which something is missing says what, and tells the rest', async () => {
    const text = (files['sled_deck.layup'] ?? '').replace('core body foam_80 20 mm', 'core body foam_80 ?');
    const book = await open({ ...files, 'sled_deck.layup': text });
    const core = hoverOf(book, 'sled_deck.layup', text.indexOf('body foam_80') + 1)?.markdown ?? '';
    expect(core).toContain('what it weighs cannot be told');
    expect(core).toMatch(/Not all of it can be told, because:\n\n- the thickness of body is not known/);
    expect(cell(core, 'area')).toMatch(/^0\.4\d+ m2$/);
  });
});

describe('a step', () => {
  it('tells the caution that its materials call for, once, and no other', () => {
    const wet = inSample('drip_tray.layup', '<|>lay gel, catalyst 2 %');
    expect(wet.split('**Caution').length).toBe(2);
    expect(wet).toContain('Styrene: extraction on');
    expect(wet).not.toContain('Epoxy sensitises');
    const dry = inSample('sled_deck.layup', '<|>lay rest');
    expect(dry).not.toContain('Caution');
  });

  it('tells how much, how long and why, then what the word means', () => {
    const markdown = inSample('sled_deck.layup', 're<|>lease semi_permanent');
    // 5 coats, 20 min each, as the line says
    expect(markdown.split('\n')[0]).toMatch(
      /^\*\*release semi\\_permanent\*\*: [\d.]+ min of hands, 100 min of waiting/,
    );
    expect(markdown).toContain('5 coats, 20 min each');
    expect(markdown).toMatch(/It takes release [\d.]+ ml\./);
    expect(markdown).toContain('---');
    expect(markdown).toContain('the part bonds to the tool');
  });

  it('of two words is shown on both of them', () => {
    const first = inSample('sled_deck.layup', 'le<|>ak test 5 mbar');
    expect(inSample('sled_deck.layup', 'leak te<|>st 5 mbar')).toBe(first);
    expect(first).toContain('10 min of waiting');
  });

  it('in a block is shown too', () => {
    expect(inSample('sled_deck.layup', 'ho<|>ld 24 h at 23 degC')).toMatch(
      /^\*\*hold 24 h at 23 degC\*\*: 24 h of waiting/,
    );
  });
});

describe('a material', () => {
  it('of the workspace tells its values as they are typed', () => {
    const markdown = inSample('sled_deck.layup', 'ply outer tri<|>ax_680');
    expect(markdown.split('\n')[0]).toContain('is a fabric of this workspace ([materials.layup:');
    expect(markdown).toMatch(/\| layers stitched 0 deg 280 g\/m2, 45 deg 200 g\/m2, -45 deg 200 g\/m2 \|/);
    // comments behind the line are no part of the value
    expect(markdown).not.toContain(' // ');
    // the same on its own name
    expect(inSample('materials.layup', 'fabric tri<|>ax_680')).toBe(markdown);
  });

  it('of the stock library names the source of each value and defers to the data sheet', () => {
    const markdown = inSample('first_try.layup', 'with epoxy_lam<|>inating_fast');
    expect(markdown).toContain('of the stock library');
    expect(markdown).toContain('the data sheet of what you buy has the last word');
    const rows = markdown
      .split('\n')
      .filter((line) => line.startsWith('| ') && !line.startsWith('| value') && !line.startsWith('| ---'));
    expect(rows.length).toBeGreaterThan(2);
    for (const row of rows) expect(row.split('|')[2]?.trim()).not.toBe('');
  });

  it('that is like another tells which values are its own', async () => {
    const text = 'resin mine like epoxy_infusion_slow {\n  price 9 EUR/kg, source "offer of May"\n}\n';
    const book = await open({ 'a.layup': text });
    const { markdown = '', about } = hoverOf(book, 'a.layup', text.indexOf('mine') + 1) ?? {};
    expect(about).toBe('mine');
    expect(markdown).toContain('like epoxy\\_infusion\\_slow');
    expect(markdown).toContain('| price 9 EUR/kg | offer of May |');
    expect(markdown).toMatch(/\| mix 100:\d+ by weight \| stock library: /);
  });

  it('adds the units of the reader', () => {
    expect(inSample('sled_deck.layup', 'core body foa<|>m_80', 'us')).toMatch(/density 80 kg\/m3 \([\d.]+ lb\/ft3\)/);
  });
});

describe('a rule', () => {
  it('behind accept tells its weight and what it is about', () => {
    expect(inSample('sled_deck.layup', 'accept bag/fe<|>w-pleats')).toMatch(
      /^\*\*bag\/few-pleats\*\* is a warning: too few pleats/,
    );
    expect(inSample('sled_deck.layup', 'accept b<|>ag/few-pleats')).toBe(
      inSample('sled_deck.layup', 'accept bag/few-p<|>leats'),
    );
  });

  it('that is none proposes one', async () => {
    const text = 'recipe r "r" {\n  revision 1, accept bag/few-pleat "so"\n}\n';
    const book = await open({ 'a.layup': text });
    expect(hoverOf(book, 'a.layup', text.indexOf('few-'))?.markdown).toBe(
      'There is no rule `bag/few-pleat`; perhaps `bag/few-pleats`.',
    );
  });
});

describe('a recipe', () => {
  it('is told at a glance in all its sizes, where it is written and where it is named', () => {
    const markdown = inSample('sled_deck.layup', 'recipe sled<|>_deck');
    expect(markdown).toContain('revision 4, 12 parts.');
    expect(markdown).toMatch(/\| as written \| 2\.\d+ kg \| 21 mm \| [\d.]+ kg \| [\d.]+ EUR \|/);
    expect(markdown).toMatch(/\| short \| 1\.\d+ kg \|/);
    expect(inSample('records/sled_deck-2026.layup', 'record sled<|>_deck')).toBe(markdown);
  });

  it('says how many findings stand open', () => {
    expect(inSample('first_try.layup', 'recipe first<|>_board')).toMatch(/Open: \d+ errors and \d+ other findings?\./);
  });
});

describe('every hover', () => {
  it('of the sample: nothing that is no number, no open placeholder, a sentence before each table', () => {
    let shown = 0;
    for (const [file, text] of Object.entries(files)) {
      for (const { index } of text.matchAll(/[A-Za-z_][\w/-]*/g)) {
        const found = hoverOf(workshop, file, index);
        if (found === undefined) continue;
        shown++;
        expect(found.markdown).not.toMatch(/NaN|Infinity|undefined|\[object|\{\w+\}(?!.*```)/);
        for (const [table] of found.markdown.matchAll(/(?<=\n\n)\| .*\n\| [-: |]+\n/g)) {
          const before = found.markdown.slice(0, found.markdown.indexOf(table)).trimEnd();
          expect(before).toMatch(/[.:]$/);
        }
      }
    }
    expect(shown).toBeGreaterThan(500);
  }, 60_000);

  it('keeps the marks of names and texts from meaning anything', async () => {
    const text =
      'fabric c "[x](command:y) <img src=z> | \u202e**b**" {\n  roll 1 m by 1 m, source "](http://a) `q`"\n}\n';
    const book = await open({ 'a.layup': text });
    const { markdown = '' } = hoverOf(book, 'a.layup', text.indexOf('c "') + 1) ?? {};
    expect(markdown).toContain('\\[x\\](command:y) &lt;img src=z\\> \\| \\*\\*b\\*\\*');
    expect(markdown).toContain('\\](http://a) \\`q\\`');
    expect(markdown).not.toMatch(/[\u202a-\u202e]/);
  });
});

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isKnown } from '../../calc/figure/index.ts';
import { reportOf } from '../../calc/report.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { plainStyle, show } from '../../language/view/text.ts';
import { openBook, type TestBook } from '../harness/book.ts';
import { damage, statementsOf } from '../harness/statements.ts';

/*
 * A half-typed line spoils nothing outside itself. The sample is the one of the notation's design; the broken lines are the
 * usual halves of lines that somebody is typing.
 */
const here = import.meta.dirname;
const sample = readFileSync(path.join(here, 'notation-sample.layup'), 'utf8');
const cases = JSON.parse(readFileSync(path.join(here, 'broken-lines.json'), 'utf8')) as {
  name: string;
  line_that_starts_with: string;
  becomes: string;
}[];
const lines = sample.split('\n');

let book: TestBook;
beforeAll(async () => {
  book = await openBook({ 'sample.layup': sample }, { modules: [analysisModule as never] });
});
afterAll(() => book.dispose());

const parse = (text: string) => book.services.parser.LangiumParser.parse(text);
const whole = () => statementsOf(parse(sample).value);

/** The line that a case breaks, from 0, and the text with it broken. */
function broken(each: (typeof cases)[number]): { line: number; text: string } {
  const line =
    each.line_that_starts_with === '__close_of_stack__'
      ? lines.findIndex((text, i) => text.trim() === '}' && lines[i + 2]?.trim().startsWith('process infusion'))
      : lines.findIndex((text) => text.trim().startsWith(each.line_that_starts_with));
  const indent = /^\s*/.exec(lines[line] ?? '')?.[0] ?? '';
  const text = lines
    .map((old, i) => (i === line ? (each.becomes === '' ? '' : indent + each.becomes) : old))
    .join('\n');
  return { line, text };
}

async function findingsOf(text: string): Promise<{ line: number; finding: Finding }[]> {
  await book.edit('sample.layup', text);
  const document = book.document('sample.layup');
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const found = await analysis.findings(document);
  return found.map((finding) => ({ line: document.textDocument.positionAt(finding.span.offset).line, finding }));
}

describe('the sample is read whole', () => {
  it('without an error of reading', async () => {
    const reading = (await findingsOf(sample)).filter(
      ({ finding }) => /^(line|unit)\//.test(finding.rule) && finding.rule !== 'line/accept-needless',
    );
    expect(
      reading.map(({ line, finding }) => `${line + 1} ${finding.rule} ${JSON.stringify(finding.message)}`),
    ).toEqual([]);
  });
});

describe('a half-typed line', () => {
  for (const each of cases) {
    it(`${each.name}: no statement on another line is lost`, () => {
      const { line, text } = broken(each);
      expect(line, 'the line to break').toBeGreaterThan(0);
      const { lost } = damage(whole(), statementsOf(parse(text).value), line);
      expect(lost).toEqual([]);
    });

    it(`${each.name}: is reported on its own line, and reading reports nothing elsewhere`, async () => {
      const { line, text } = broken(each);
      const before = new Set((await findingsOf(sample)).map(({ line: at, finding }) => `${at} ${finding.rule}`));
      const now = await findingsOf(text);
      const reading = now.filter(
        ({ finding }) => /^(line|unit)\//.test(finding.rule) || /^name\/unknown/.test(finding.rule),
      );
      expect(
        reading.map((f) => f.line),
        `something is said on line ${line + 1}`,
      ).toContain(line);
      const elsewhere = reading.filter(
        (f) => f.line !== line && /^(line|unit)\//.test(f.finding.rule) && !before.has(`${f.line} ${f.finding.rule}`),
      );
      expect(elsewhere.map((f) => `${f.line + 1} ${f.finding.rule} ${JSON.stringify(f.finding.message)}`)).toEqual([]);
    });
  }
});

describe('a slip in the head of a block', () => {
  const heads = [
    ['a word too many', 'stack from', 'stack form from'],
    ['a connective misspelt', 'stack from', 'stack form'],
    ['two words behind the name', 'recipe sled_deck', 'recipe sled_deck as before'],
    ['a word behind `part`', 'part {', 'part outer {'],
    ['a connective misspelt in the process', 'process infusion with', 'process infusion wth'],
    ['a word behind a size', 'size short', 'size short 2'],
    ['a word behind a load', 'load rider', 'load rider two'],
    ['a clause behind a process', 'epoxy_slow at 23 degC', 'epoxy_slow at 23 degC, 75 % RH'],
    ['a clause behind a stack', 'stack from tool sled_tool', 'stack from tool sled_tool, on trestles'],
    ['a clause behind a note', 'size short', 'size short, note "For tents.", two of them'],
  ] as const;
  for (const [name, head, slipped] of heads) {
    it(`${name}: no statement on another line is lost`, () => {
      const line = lines.findIndex((text) => text.includes(head));
      expect(line, head).toBeGreaterThan(0);
      const text = lines.map((old, i) => (i === line ? old.replace(head, slipped) : old)).join('\n');
      expect(damage(whole(), statementsOf(parse(text).value), line).lost).toEqual([]);
    });
  }

  it('a fraction of an inch is told as the decimal that it is', async () => {
    for (const [typed, told] of [
      ['3/8', { decimal: '0.375', fraction: '3/8' }],
      ['1 3/8', { decimal: '1.375', fraction: '1 3/8' }],
    ] as const) {
      const text = sample.replace('drill 8 holes 8 mm in bolts', `drill 8 holes ${typed} in in bolts`);
      const found = (await findingsOf(text)).filter(({ finding }) => finding.rule === 'line/not-understood');
      expect(found.map(({ finding }) => finding.message.figures.words)).toEqual([
        { template: 'a fraction is written as a decimal: {decimal} for {fraction}', figures: told },
      ]);
    }
  });

  it('the head of an entry that is not finished leaves the entry below alone', () => {
    for (const head of [
      'fabric new_cloth',
      'fabric new_cloth like',
      'resin r "New" of',
      'recipe deck',
      'tool',
      'record deck 2026-',
    ]) {
      const found = statementsOf(parse(`${head}\nfabric old {\n  fibre e_glass\n}\n`).value);
      expect(
        found.filter(({ line }) => line > 0),
        head,
      ).toEqual([
        { line: 1, type: 'Material', text: 'fabric old' },
        { line: 2, type: 'MaterialFact', text: 'fibre e_glass' },
      ]);
    }
  });
});

/** Figures of the layers of the first recipe, by the name of the layer. */
function layerFigures(text: string): Map<string, Record<string, string>> {
  const document = book.document('sample.layup');
  expect(document.textDocument.getText()).toBe(text);
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const model = analysis
    .entries(document)
    .map((entry) => entry.model)
    .find((each) => each.kind === 'recipe');
  if (model?.kind !== 'recipe' || model.recipes[0] === undefined) throw new Error('the recipe is gone');
  const { layers } = reportOf(model.recipes[0], analysis.shelf());
  return new Map(
    layers.map((row) => [
      row.laid.name,
      Object.fromEntries(
        row.figures
          .filter(({ name }) => !/share|cost|height/.test(name))
          .map(({ name, figure }) => [name, isKnown(figure) ? figure.value.toPrecision(9) : 'cannot']),
      ),
    ]),
  );
}

/** What each layer of the sample needs of other lines, beside its own: a line that is broken takes only these with it. */
const needs: Readonly<Record<string, readonly string[]>> = {
  outer: ['body', 'landing', 'outline'],
  keel: [],
  body: ['keel', 'outer', 'bolts', 'outline'],
  bolts: ['body', 'outline'],
  pad: ['outline'],
  inner: ['outline'],
};

describe('the figures of layers that do not depend on the broken line', () => {
  for (const each of cases) {
    it(`stay: ${each.name}`, async () => {
      await findingsOf(sample);
      const before = layerFigures(sample);
      const { text } = broken(each);
      await findingsOf(text);
      const after = layerFigures(text);
      const start = each.line_that_starts_with;
      const hit = start.startsWith('outline')
        ? 'outline'
        : start.startsWith('let')
          ? 'landing'
          : (/^(?:ply|strip|core) (\w+)/.exec(start)?.[1] ?? '');
      // a process without its resin takes the resin of every layer with it, and so their thickness
      const noResin = start.startsWith('process') && !/with \w+/.test(each.becomes);
      for (const [name, figures] of before) {
        if (name === hit || (needs[name] ?? []).includes(hit)) continue;
        const now = after.get(name);
        expect(now?.layer_area, `${name} keeps its area`).toBe(figures.layer_area);
        expect(now?.layer_dry_mass, `${name} keeps its dry mass`).toBe(figures.layer_dry_mass);
        if (!noResin) expect(now, name).toEqual(figures);
      }
    });
  }
});

describe('every line of the sample cut after every token', () => {
  it('leaves all other statements whole in at least 99.5 % of the cuts', () => {
    const before = whole();
    const lexer = book.services.parser.Lexer;
    let cuts = 0;
    const damaged: string[] = [];
    lines.forEach((text, line) => {
      const { tokens } = lexer.tokenize(`${text}\n`, { mode: 'partial' });
      const words = tokens.filter(
        (token) => token.tokenType.name !== 'NL' && token.image !== '{' && token.image !== '}',
      );
      // a block keeps its brace: what is cut is the head before it
      const brace = /\{\s*(\/\/.*)?$/.test(text) ? ' {' : '';
      for (const token of words.slice(0, -1)) {
        const cut = text.slice(0, (token.endOffset ?? token.startOffset) + 1) + brace;
        cuts++;
        const after = statementsOf(parse(lines.map((old, i) => (i === line ? cut : old)).join('\n')).value);
        if (damage(before, after, line).lost.length > 0) damaged.push(`${line + 1}: ${cut.trim()}`);
      }
    });
    expect(cuts).toBeGreaterThan(600);
    expect(damaged.length / cuts, damaged.join('\n')).toBeLessThanOrEqual(0.005);
  }, 120_000);
});

describe('the version of the notation', () => {
  const told = async (text: string) =>
    (await findingsOf(text)).map(({ finding: { message, rule, span } }) => [
      rule,
      show(message, plainStyle),
      text.slice(span.offset, span.end),
    ]);
  const shop = 'shop "Hollow Tarn Workshop" {\n}\n';

  it.each(['', 'notation 1\n', '// a shop\n\nnotation 1 // the first\n'])('is ours or is not said: %j', async (head) =>
    expect(await told(head + shop)).toEqual([]),
  );

  it.each([
    ['notation 2', 'notation 2 is newer than this tool, which knows notation 1'],
    ['notation 1.5', 'notation 1.5 is newer than this tool, which knows notation 1'],
    ['notation', 'which version of the notation? notation 1'],
    ['notation 0', 'which version of the notation? notation 1'],
  ])('is told where it is another: %s', async (line, message) =>
    expect(await told(`${line} // so\n\n${shop}`)).toEqual([['line/not-understood', message, line]]),
  );
});

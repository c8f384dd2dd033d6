import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from 'vitest';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import type { IGrammar, StateStack } from 'vscode-textmate';
import { INITIAL, parseRawGrammar, Registry } from 'vscode-textmate';
import { UNIT_ATOMS } from '../../calc/quantity/units.ts';
import type { Place } from '../../language/words/index.ts';
import { wordsAt } from '../../language/words/index.ts';

const root = join(import.meta.dirname, '..', '..');
const grammarFile = join(root, 'syntaxes', 'layup.tmLanguage.json');
const require = createRequire(import.meta.url);

let grammar: IGrammar;

beforeAll(async () => {
  const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
  await loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) as ArrayBuffer);
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: async () => parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile),
  });
  const loaded = await registry.loadGrammar('source.layup');
  if (!loaded) throw new Error('the grammar does not load');
  grammar = loaded;
});

interface Token {
  readonly line: number;
  readonly text: string;
  readonly scopes: readonly string[];
}

function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  let state: StateStack = INITIAL;
  text.split('\n').forEach((line, index) => {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    for (const token of result.tokens) {
      tokens.push({ line: index + 1, text: line.slice(token.startIndex, token.endIndex), scopes: token.scopes });
    }
  });
  return tokens;
}

const sample = readFileSync(join(root, 'tests', 'language', 'notation-sample.layup'), 'utf8');
const outermost = (token: Token) =>
  token.scopes.filter((scope) => scope !== 'source.layup' && !scope.startsWith('meta.'));

describe('the colours of a whole book', () => {
  it('has nothing invalid', () => {
    expect(tokenize(sample).filter((token) => token.scopes.some((scope) => scope.startsWith('invalid')))).toEqual([]);
  });

  it('gives every word, number and sign a scope of its own', () => {
    expect(tokenize(sample).filter((token) => token.text.trim() !== '' && outermost(token).length === 0)).toEqual([]);
  });

  it('closes every block, so that nothing leaks into the next entry', () => {
    const after = tokenize(`${sample}\nend`).at(-1);
    expect(after?.scopes).toEqual(['source.layup', 'variable.other.layup']);
  });

  it('uses only scopes that colour themes know', () => {
    const known = new Set([
      'comment',
      'string',
      'constant',
      'keyword',
      'storage',
      'support',
      'entity',
      'variable',
      'punctuation',
    ]);
    const roots = new Set(
      tokenize(sample)
        .flatMap(outermost)
        .map((scope) => scope.split('.')[0] ?? ''),
    );
    expect([...roots].filter((name) => !known.has(name))).toEqual([]);
  });
});

describe('a number with its unit', () => {
  const units = [
    'mm',
    'm2',
    'g/m2',
    'kg/m3',
    'oz/yd2',
    'oz/ft2',
    'mPa.s',
    '%',
    'degC',
    'degF',
    'K/min',
    'K',
    'EUR/m2',
    'GBP/each',
    'USD',
    'mil',
    'um',
    'µm',
    'g/cm³',
    '°C',
    'inHg',
    'mbar',
    'in',
    'W/m.K',
    '/K',
    'gsm',
    'cP',
    'm2/kg',
    'ft2',
    'MPa',
    'deg',
    'h',
  ];
  it.each(units)('%s', (unit) => {
    const tokens = tokenize(`  tab 12.5 ${unit}, net`).filter((token) => token.text.trim() !== '');
    expect(tokens.find((token) => token.text === '12.5')?.scopes).toContain('constant.numeric.layup');
    expect(tokens.find((token) => token.text === unit)?.scopes).toContain('keyword.other.unit.layup');
  });

  it.each(UNIT_ATOMS.map((atom) => atom.symbol).filter((symbol) => !symbol.includes(' ')))(
    '%s, as the table of units has it',
    (unit) => {
      const tokens = tokenize(`  tab 12.5 ${unit}, net`);
      expect(tokens.find((token) => token.text === unit)?.scopes).toContain('keyword.other.unit.layup');
    },
  );

  it('is not looked for inside a name', () => {
    const tokens = tokenize('    lay biax_440 to mat.1');
    expect(tokens.filter((token) => token.scopes.includes('constant.numeric.layup'))).toEqual([]);
  });

  it('marks a decimal comma, which the notation does not have', () => {
    const tokens = tokenize('  density 1,10 g/cm3');
    expect(tokens.find((token) => token.text === '1,10')?.scopes).toContain('invalid.illegal.decimal-comma.layup');
  });
});

describe('the words of the table', () => {
  const blocks: readonly (readonly [Place, string])[] = [
    ...(
      ['fibre', 'fabric', 'prepreg', 'resin', 'gelcoat', 'catalyst', 'paste', 'core', 'consumable', 'tool'] as const
    ).map((kind) => [kind, `${kind} own "Own" {`] as const),
    ['shop', 'shop "Own" {'],
    ['record', 'record own 2026-05-14 {'],
    ['recipe', 'recipe own {'],
    ['part', 'recipe own {\npart {'],
    ['stack', 'recipe own {\nstack from tool own {'],
    ['load', 'recipe own {\nload own {'],
    ['size', 'recipe own {\nsize own {'],
    ['process', 'recipe own {\nprocess hand {'],
    ['kit', 'recipe own {\nprocess hand {\nkit {'],
    ['infuse', 'recipe own {\nprocess infusion {\ninfuse {'],
    ['cure', 'recipe own {\nprocess hand {\ncure {'],
    ['postcure', 'recipe own {\nprocess hand {\npostcure free {'],
  ];
  const scoped = (lines: string, word: string) =>
    tokenize(lines)
      .filter((token) => token.text.trim() !== '')
      .some(
        (token) =>
          token.text.trim().startsWith(word) &&
          outermost(token).some((scope) => /^(support|storage|keyword|entity)/.test(scope)),
      );
  // the first word of a line; two-word verbs as they stand
  it.each(blocks)('begin a line of %s in colour', (place, head) => {
    const plain = wordsAt(place).filter((word) => !scoped(`${head}\n${word.word} `, word.word));
    expect(plain.map((word) => word.word)).toEqual([]);
  });

  const clauses: readonly (readonly [Place, string])[] = [
    ['clause of coat', 'coat'],
    ['clause of ply', 'ply'],
    ['clause of strip', 'strip'],
    ['clause of patch', 'patch'],
    ['clause of core', 'core'],
    ['clause of insert', 'insert'],
    ['clause of repeat', 'repeat'],
    ['clause of step', 'bag'],
  ];
  const behindOthers = new Set(['corner', 'every', 'edge', 'then', 'below', 'perimeter', 'fill']);
  // words that stand behind their number (`2 coats`, `80 mm past edge`) are coloured with it
  it.each(clauses)('begin a %s in colour', (place, layer) => {
    const leading = wordsAt(place).filter(
      (word) => !(word.takes ?? []).some((argument) => argument.before) && !behindOthers.has(word.word),
    );
    const plain = leading.filter(
      (word) =>
        !scoped(
          `recipe own {\n${place === 'clause of step' ? 'process hand' : 'stack from tool own'} {\n${layer} own own, ${word.word} `,
          word.word,
        ),
    );
    expect(plain.map((word) => word.word)).toEqual([]);
  });
});

describe('hostile lines', () => {
  const long = (piece: string) => piece.repeat(Math.ceil(20_000 / piece.length)).slice(0, 20_000);
  const lines: Record<string, string> = {
    'one word': long('a'),
    'one number': long('7'),
    'open brackets': long('('),
    'open braces': long('{'),
    'close braces': long('}'),
    quotes: long('"'),
    commas: long(','),
    clauses: long(', wrap onto a'),
    'almost units': long('1 mPa.'),
    'almost rules': long('a-'),
    slashes: long('1 g/'),
    blocks: long('process hand {'),
    heads: long('process '),
    blanks: long(' '),
    ratios: long('1:'),
    dates: long('2026-05-'),
    'decimal commas': long('1,'),
    dots: long('a.'),
    comments: long('/*'),
    accepts: long('accept a/'),
  };
  // The line is twice as long: a linear grammar takes about twice the time, a quadratic one four times. The floor keeps
  // a pause of the machine from failing the test; the ceiling is the time the editor itself gives one line.
  it.each(Object.entries(lines))('%s: bounded', (_, line) => {
    const time = (text: string) => {
      let best = Number.POSITIVE_INFINITY;
      for (let run = 0; run < 3; run++) {
        const start = performance.now();
        grammar.tokenizeLine(text, INITIAL);
        best = Math.min(best, performance.now() - start);
      }
      return best;
    };
    const half = time(line.slice(0, 10_000));
    const whole = time(line);
    expect(whole).toBeLessThan(Math.max(3.2 * half, 150));
    expect(whole).toBeLessThan(2_000);
  });

  it('the patterns repeat nothing that repeats', () => {
    const patterns: string[] = [];
    const collect = (value: unknown): void => {
      if (Array.isArray(value)) value.forEach(collect);
      else if (value && typeof value === 'object') {
        for (const [key, inner] of Object.entries(value)) {
          if ((key === 'match' || key === 'begin' || key === 'end') && typeof inner === 'string') patterns.push(inner);
          else collect(inner);
        }
      }
    };
    collect(JSON.parse(readFileSync(grammarFile, 'utf8')));
    expect(patterns.length).toBeGreaterThan(50);
    expect(patterns.filter((pattern) => /[*+}]\)[*+]/.test(pattern))).toEqual([]);
  });
});

describe('annotated lines', () => {
  it('carry the scopes that they name', async () => {
    const runner = require.resolve('vscode-tmgrammar-test/dist/unit.js');
    const { stdout } = await promisify(execFile)(
      process.execPath,
      [runner, '-g', grammarFile, join(root, 'tests', 'grammar', '*.layup')],
      { cwd: root },
    );
    expect(stdout.match(/run successfuly/g)?.length).toBe(4);
  }, 60_000);
});

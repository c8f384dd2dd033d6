import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LayupLexer } from '../../../language/grammar/lexer.ts';
import { isNewline, tokenKinds } from '../../../language/grammar/tokens.ts';
import type { LayupFormatter } from '../../../language/lsp/format.ts';
import { formatChanges, type TextChange } from '../../../language/view/format/index.ts';
import { parsed, viewServices } from './parsed.ts';

const services = viewServices();
const lexer = services.parser.Lexer as LayupLexer;
const kinds = tokenKinds(lexer.definition);
const sample = readFileSync(new URL('../notation-sample.layup', import.meta.url), 'utf8');

function applied(text: string, changes: readonly TextChange[]): string {
  let out = '';
  let at = 0;
  for (const change of changes) {
    out += text.slice(at, change.start) + change.text;
    at = change.end;
  }
  return out + text.slice(at);
}

const format = (text: string): string => applied(text, formatChanges(text, lexer.plainTokens(text), kinds));

/** The words and signs line by line; empty lines aside. */
function words(text: string): string[] {
  const lines: string[][] = [[]];
  for (const token of lexer.plainTokens(text)) {
    if (isNewline(token)) lines.push([]);
    else (lines[lines.length - 1] as string[]).push(`${token.tokenType.name} ${token.image.trimEnd()}`);
  }
  return lines.filter((line) => line.length > 0).map((line) => line.join(' | '));
}

describe('the formatter', () => {
  it('leaves a text in good form alone', () => {
    expect(formatChanges(sample, lexer.plainTokens(sample), kinds)).toEqual([]);
  });

  it.each([
    ['spaces between words', 'fibre   e_glass {  }', 'fibre e_glass {}'],
    ['number and unit', 'fabric a {\nprice 7.40EUR/m2\n}', 'fabric a {\n  price 7.40 EUR/m2\n}'],
    ['a per cent sign', 'shop {\n  overhead 12%\n}', 'shop {\n  overhead 12 %\n}'],
    [
      'no space in a compound unit, a ratio, a copy',
      'viscosity 290  mPa.s , 100 : 31, mat.1',
      'viscosity 290 mPa.s, 100:31, mat.1',
    ],
    ['points', 'centred at ( 210mm from heel ,0 mm )', 'centred at (210 mm from heel, 0 mm)'],
    ['commas', 'ply a b at 0 deg ,net,turned over', 'ply a b at 0 deg, net, turned over'],
    ['signs of numbers', 'layers stitched -45 deg,- 45 deg', 'layers stitched -45 deg, -45 deg'],
    ['differences', 'let a=25 mm - 3mm+2*b', 'let a = 25 mm - 3 mm + 2 * b'],
    ['a name of several pieces', 'bag film, accept bag/few-pleats  "flat"', 'bag film, accept bag/few-pleats "flat"'],
    ['comparisons', 'expect mass<=2.3 kg', 'expect mass <= 2.3 kg'],
    ['tolerances', 'density 1.10 g/cm3+-0.02 g/cm3', 'density 1.10 g/cm3 +- 0.02 g/cm3'],
    ['per kelvin', 'expands 23e-6/K', 'expands 23e-6 /K'],
    ['a block on one line', 'fabric a like stock{price 5.10 EUR/m2}', 'fabric a like stock { price 5.10 EUR/m2 }'],
    ['dates', 'record a  2026-05-14', 'record a 2026-05-14'],
    ['half a date', 'record a 2026-05', 'record a 2026-05'],
    ['a decimal comma', 'gel 1,5 h', 'gel 1,5 h'],
    ['tabs', '\tlet\ta =\t1 mm', 'let a = 1 mm'],
  ])('puts in order: %s', (_what, typed, wanted) => {
    expect(format(typed)).toBe(`${wanted}\n`);
  });

  it('indents by the depth of the block and never touches what lines say', () => {
    const typed =
      'recipe a {\npart {\noutline circle 2 m\n}\n    stack {\n  ply a b\n, note "x  y"\n// between\n  , net\n}\n}\n';
    expect(format(typed)).toBe(
      'recipe a {\n  part {\n    outline circle 2 m\n  }\n  stack {\n    ply a b\n      , note "x  y"\n      // between\n      , net\n  }\n}\n',
    );
  });

  it('keeps comments, their place and the space before them', () => {
    const typed =
      'fabric a {   // open\n  price ?                 // asked\n      // own line  \n  /* two\n   lines */ fibre  b\n}\n';
    expect(format(typed)).toBe(
      'fabric a {   // open\n  price ?                 // asked\n  // own line\n  /* two\n   lines */ fibre b\n}\n',
    );
  });

  it('leaves one empty line of several, none at the ends, and the line ends as they are', () => {
    expect(format('\r\n\r\nfibre a {}\r\n\r\n  \r\n\r\nfibre b {}\n\n\n')).toBe('fibre a {}\r\n\r\nfibre b {}\n');
    expect(format('fibre a {}\r\nfibre b {}')).toBe('fibre a {}\r\nfibre b {}\r\n');
  });

  it('keeps the indentation of an entry whose braces do not balance, and puts the others in order', () => {
    const open = 'fabric a {\n      fibre  x\n\nfabric b {\nroll 1 m\n}\n';
    expect(format(open)).toBe('fabric a {\n      fibre x\n\nfabric b {\n  roll 1 m\n}\n');
    const surplus = 'fabric b {\nroll 1 m\n}\n\nfabric c {\n     fibre z\n}\n }\n';
    expect(format(surplus)).toBe('fabric b {\n  roll 1 m\n}\n\nfabric c {\n     fibre z\n}\n }\n');
  });

  it('touches nothing behind a comment that is not closed', () => {
    const typed = 'fibre  a {}\n/* was  gel 1,5 h-2\n   and  more\n';
    expect(format(typed)).toBe('fibre a {}\n/* was  gel 1,5 h-2\n   and  more\n');
  });

  it('leaves signs that mean nothing where they are', () => {
    expect(format('fabric a {\n @@  fibre  x ;  y\n}\n')).toBe('fabric a {\n  @@  fibre x ;  y\n}\n');
  });

  it('keeps a byte order mark', () => {
    expect(format('\ufeff  fibre a {}')).toBe('\ufefffibre a {}\n');
  });

  const marks = [
    '{',
    '}',
    '(',
    ')',
    ',',
    '\n',
    '\r\n',
    ' ',
    '  ',
    '\t',
    '-',
    '.',
    '/',
    '*',
    '"',
    ':',
    '+',
    '%',
    '?',
    '5',
    'a',
    '@',
    'core ',
    '\u00a0',
    '// c',
    '/*',
    '*/',
  ];
  const edits = fc.array(
    fc.record({ at: fc.nat(sample.length), cut: fc.nat(12), put: fc.constantFrom(...marks, '') }),
    { minLength: 1, maxLength: 6 },
  );
  const edited = edits.map((all) =>
    all.reduce((text, { at, cut, put }) => text.slice(0, at) + put + text.slice(at + cut), sample),
  );
  const noise = fc
    .array(fc.constantFrom(...marks, 'ply', 'mm', 'fabric x', '2026-05-14', '100:31', 'g/m2'), { maxLength: 60 })
    .map((all) => all.join(''));

  it('changes no word and no line of any text, and a second time nothing at all', () => {
    fc.assert(
      fc.property(fc.oneof({ weight: 2, arbitrary: edited }, { weight: 1, arbitrary: noise }), (text) => {
        const once = format(text);
        expect(words(once)).toEqual(words(text));
        expect(format(once)).toBe(once);
      }),
      { numRuns: 400 },
    );
  });

  it('has changes in the order of the text that do not overlap', () => {
    fc.assert(
      fc.property(edited, (text) => {
        let end = -1;
        for (const change of formatChanges(text, lexer.plainTokens(text), kinds)) {
          expect(change.start).toBeGreaterThanOrEqual(end);
          expect(change.end).toBeGreaterThanOrEqual(change.start);
          end = change.end;
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe('formatting requests', () => {
  const typed = 'fabric a {\nfibre   x\nroll  1 m\n   }\n';
  const document = parsed(services, typed);
  const formatter = services.lsp.Formatter as LayupFormatter;
  const options = { tabSize: 4, insertSpaces: true };
  const lines = (edits: { range: { start: { line: number } } }[]): number[] => [
    ...new Set(edits.map((edit) => edit.range.start.line)),
  ];
  const textDocument = { uri: document.uri.toString() };

  it('answers for the document, a range of lines and the line of a brace', () => {
    expect(lines(formatter.formatDocument(document, { textDocument, options }))).toEqual([1, 2, 3]);
    const range = { start: { line: 1, character: 3 }, end: { line: 2, character: 0 } };
    expect(lines(formatter.formatDocumentRange(document, { textDocument, options, range }))).toEqual([1]);
    const position = { line: 3, character: 4 };
    expect(lines(formatter.formatDocumentOnType(document, { textDocument, options, position, ch: '}' }))).toEqual([3]);
  });
});

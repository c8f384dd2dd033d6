import type { Chance } from './chance.ts';
import { corpus } from './corpus.ts';

/** Puts `text` in the place of what stands between two offsets. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export const applied = (before: string, { start, end, text }: Edit): string =>
  before.slice(0, start) + text + before.slice(end);

/** What people leave behind in the middle of typing, and what nobody types. */
const scraps = [
  ' ',
  '\n',
  '\r\n',
  '\r',
  '\t',
  ',',
  ', ',
  '{',
  '}',
  '(',
  ')',
  '"',
  "'",
  '/',
  '//',
  '/*',
  '*/',
  '.',
  ':',
  ';',
  '=',
  '<',
  '>=',
  '+',
  '-',
  '*',
  '%',
  '?',
  '±',
  'at ',
  'by ',
  'from ',
  'over ',
  'like ',
  'with ',
  'like stock',
  'note "',
  'accept ',
  'accept wrap/short "as agreed"',
  'repeat 3 {\n',
  'mirror\n',
  'let x = x\n',
  'wrap onto ',
  '0',
  '-1',
  '1e9',
  '1e308',
  '1e-308',
  '1e999',
  '-0',
  '0.0000001',
  '9'.repeat(40),
  '1,5',
  '12 mm',
  '0 mm',
  '-5 mm',
  '1e300 kg',
  '2026-02-30',
  '9999-99-99',
  '0000-00-00',
  '\u0000',
  '\ufeff',
  '\u00a0',
  '\u202e',
  '\u2066',
  '\u0301',
  '\ud83e\uddf5',
  '\ud800',
  'é',
  'µ',
  '°',
  '²',
  '\\',
  '`',
  '$',
  '$' + '{x}',
  '<b>',
  '[a](b)',
  '__proto__',
  'constructor',
  'toString',
] as const;

type Maker = (text: string, chance: Chance) => Edit;

const lineStarts = (text: string): number[] => [0, ...[...text.matchAll(/\n/g)].map((found) => found.index + 1)];

/** A line of the text, with its end. */
function someLine(text: string, chance: Chance): { start: number; end: number } {
  const starts = lineStarts(text);
  const index = chance.below(starts.length);
  return { start: starts[index] as number, end: starts[index + 1] ?? text.length };
}

function someWord(text: string, chance: Chance): { start: number; end: number } {
  const from = chance.below(text.length + 1);
  const found = /[A-Za-z_]\w*|\d[\d.]*|[^\s\w]/.exec(text.slice(from, from + 200));
  if (found === null) return { start: from, end: from };
  return { start: from + found.index, end: from + found.index + found[0].length };
}

const makers: readonly Maker[] = [
  // typing
  (text, chance) => {
    const at = chance.below(text.length + 1);
    return { start: at, end: at, text: chance.pick(scraps) };
  },
  (text, chance) => ({ ...someWord(text, chance), text: chance.pick(corpus.words) }),
  (text, chance) => ({ ...someWord(text, chance), text: chance.pick(scraps) }),
  // deleting
  (text, chance) => {
    const start = chance.below(text.length + 1);
    return { start, end: Math.min(text.length, start + 1 + chance.below(chance.oneIn(5) ? 200 : 6)), text: '' };
  },
  (text, chance) => ({ ...someWord(text, chance), text: '' }),
  (text, chance) => ({ ...someLine(text, chance), text: '' }),
  // cutting the end of a line, or of everything
  (text, chance) => {
    const { start, end } = someLine(text, chance);
    const from = start + chance.below(end - start + 1);
    return { start: Math.min(from, Math.max(start, end - 1)), end: Math.max(start, end - 1), text: '' };
  },
  (text, chance) => ({ start: chance.below(text.length + 1), end: text.length, text: chance.oneIn(2) ? '' : '\n' }),
  // doubling a line, pasting lines
  (text, chance) => {
    const { start, end } = someLine(text, chance);
    return { start: end, end, text: text.slice(start, end) };
  },
  (text, chance) => {
    const { start } = someLine(text, chance);
    return { start, end: start, text: `${chance.pick(corpus.lines)}\n` };
  },
  (text, chance) => {
    const { start } = someLine(text, chance);
    const from = chance.below(corpus.lines.length);
    return { start, end: start, text: `${corpus.lines.slice(from, from + 2 + chance.below(5)).join('\n')}\n` };
  },
  (text, chance) => {
    const { start } = someLine(text, chance);
    return { start, end: start, text: chance.pick(corpus.smallChunks) };
  },
  (text, chance) => {
    const { start, end } = someLine(text, chance);
    return { start, end, text: `${chance.pick(corpus.lines)}\n` };
  },
  // two lines change places
  (text, chance) => {
    const { start, end } = someLine(text, chance);
    const next = text.indexOf('\n', end);
    const stop = next < 0 ? text.length : next + 1;
    return { start, end: stop, text: text.slice(end, stop) + text.slice(start, end) };
  },
];

/** Longer texts are cut back: the many edits of a session must not let its documents grow. */
const longest = 6_000;

export function someEdit(text: string, chance: Chance): Edit {
  if (text.length > longest) return { start: chance.below(text.length - longest), end: text.length, text: '' };
  return chance.pick(makers)(text, chance);
}

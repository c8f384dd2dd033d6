import type { IToken } from 'chevrotain';
import type { LayupLexer } from '../../grammar/lexer.ts';
import { endOf } from '../../grammar/tokens.ts';
import { entryAround, type Statement, statementsOf } from '../statements.ts';

/** What is being typed, and what stands around it. Offsets are those of the whole text. */
export interface Cursor {
  /** the word under the cursor, empty between words */
  readonly start: number;
  readonly end: number;
  /** a number that the word, or the cursor, touches: `12mm` */
  readonly touched?: string;
  /** the word with its hyphens and strokes, as rules are named: `bag/few-pleats` */
  readonly ruleStart: number;
  readonly ruleEnd: number;
  /** of the line: the words and signs before the word and behind it */
  readonly before: readonly IToken[];
  readonly after: readonly IToken[];
  readonly blocks: readonly Statement[];
  /** the statements of the entry, this one among them */
  readonly statements: readonly Statement[];
}

const wordBefore = /(?:[\p{L}_°][\p{L}\p{N}_°²³]*(?:[./][\p{L}\p{N}_²³]*)*|%|\/[\p{L}\p{N}²³]*)$/u;
const wordBehind = /^[\p{L}\p{N}_²³]+(?:[./][\p{L}_][\p{L}\p{N}_²³]*)*/u;
const numberBefore = /\d+(?:\.\d+)?(?:[eE][+-]?\d+)?$/;
const ruleBefore = /[\p{L}][\p{L}\p{N}_-]*(?:\/[\p{L}\p{N}_-]*)?$/u;
const ruleBehind = /^[\p{L}\p{N}_-]*(?:\/[\p{L}\p{N}_-]*)?/u;

/** Reads the entry around a cursor; undefined in comments and in words in quotes. */
export function cursorAt(text: string, offset: number, lexer: LayupLexer): Cursor | undefined {
  const entry = entryAround(text, offset);
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const line = text.slice(lineStart, offset);
  const behind = text.slice(offset, offset + 200).split(/[\r\n]/, 1)[0] ?? '';
  const typed = wordBefore.exec(line)?.[0] ?? '';
  const start = offset - typed.length;
  const touched = numberBefore.exec(line.slice(0, line.length - typed.length))?.[0];
  const isNumber = typed === '' && touched !== undefined;
  const end = offset + (isNumber ? 0 : (wordBehind.exec(behind)?.[0].length ?? 0));
  // a word in the empty place keeps the line whole, and shows by its indentation which block it stands in
  const stand = start === end ? ' x' : '';
  const own = text.slice(entry.start, offset) + stand + text.slice(offset, entry.end);
  const at = start - entry.start + (stand === '' ? 0 : 1);
  const { tokens, hidden } = lexer.tokenize(own);
  const inside = (token: IToken): boolean => token.startOffset < at && at < endOf(token);
  if (hidden.some((token) => inside(token) || (token.image.startsWith('//') && token.startOffset === at)))
    return undefined;
  const statements = statementsOf(tokens);
  for (const statement of statements) {
    const index = statement.tokens.findIndex((token) => token.startOffset <= at && at < endOf(token));
    if (index < 0) continue;
    if (statement.tokens[index]?.image.startsWith('"')) return undefined;
    const rule = ruleBefore.exec(line)?.[0] ?? '';
    return {
      start,
      end,
      ...(touched === undefined ? {} : { touched }),
      ruleStart: offset - rule.length,
      ruleEnd: offset + (ruleBehind.exec(behind)?.[0].length ?? 0),
      before: statement.tokens.slice(0, index),
      after: statement.tokens.slice(index + 1),
      blocks: statement.blocks,
      statements,
    };
  }
  return undefined;
}

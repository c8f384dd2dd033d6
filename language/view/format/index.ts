import type { IToken } from 'chevrotain';
import { endOf, isNewline, type TokenKinds } from '../../grammar/tokens.ts';
import { type Line, linesOf } from '../lines.ts';
import { indentsOf } from './indent.ts';
import { spaceBetween } from './spacing.ts';

/** `text` in place of what stands from `start` up to `end` (offsets). */
export interface TextChange {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const blank = /[ \t\u00a0\ufeff]/;

/**
 * The changes that bring a text into its form: two spaces a block, one space between words, at most one empty line in a row, a
 * line end at the end. Over plain tokens, so a broken file is formatted too. Lines are never moved, joined, split or aligned;
 * comments keep their place and the space before them; signs that mean nothing are left as they are.
 * `wanted` tells the lines that may be touched.
 */
export function formatChanges(
  text: string,
  allTokens: readonly IToken[],
  kinds: TokenKinds,
  wanted: (line: Line) => boolean = () => true,
): TextChange[] {
  const stop = openComment(allTokens);
  const tokens = stop === undefined ? allTokens : allTokens.slice(0, stop);
  const readTo = stop === undefined ? text.length : (allTokens[stop] as IToken).startOffset;
  const lines = linesOf(text, tokens);
  const indents = indentsOf(text, allTokens, lines, kinds);
  const changes: TextChange[] = [];
  const change = (start: number, end: number, to: string): void => {
    if (end <= readTo && text.slice(start, end) !== to) changes.push({ start, end, text: to });
  };
  const begin = text.startsWith('\ufeff') ? 1 : 0;
  const lastSaid = lines.findLastIndex((line) => !isEmpty(text, line));
  let emptyLines = 1;
  lines.forEach((line, i) => {
    const start = Math.max(line.start, begin);
    if (isEmpty(text, line)) {
      emptyLines++;
      const surplus = emptyLines > 1 || (stop === undefined && i > lastSaid);
      if (wanted(line)) change(start, surplus ? line.next : line.end, '');
      return;
    }
    emptyLines = 0;
    const halfRead = stop !== undefined && i === lines.length - 1;
    if (halfRead || !wanted(line)) return;
    const indentEnd = skipBlank(text, start, line.end);
    const indent = indents[i];
    if (indent !== undefined) change(start, indentEnd, ' '.repeat(indent));
    spaceLine(text, line, change);
    trimLine(text, line, change);
  });
  const last = lines[lines.length - 1];
  if (last !== undefined && stop === undefined && !isEmpty(text, last) && wanted(last)) {
    changes.push({ start: text.length, end: text.length, text: lineEndOf(tokens) });
  }
  return changes;
}

type Change = (start: number, end: number, to: string) => void;

function spaceLine(text: string, { tokens }: Line, change: Change): void {
  for (let k = 1; k < tokens.length; k++) {
    const left = tokens[k - 1] as IToken;
    const right = tokens[k] as IToken;
    const [from, to] = [endOf(left), right.startOffset];
    // signs that mean nothing stand between them
    if (skipBlank(text, from, to) !== to) continue;
    const [before, after] = [tokens[k - 2], tokens[k + 1]];
    const space = spaceBetween({
      before,
      left,
      right,
      after,
      glued: from === to,
      leftGlued: before !== undefined && endOf(before) === left.startOffset,
      rightGlued: after !== undefined && endOf(right) === after.startOffset,
    });
    if (space !== 'kept') change(from, to, space === 'one' ? ' ' : '');
  }
}

function trimLine(text: string, line: Line, change: Change): void {
  const last = line.tokens[line.tokens.length - 1];
  // the words of a text that is not closed, and of a comment, are not ours
  let end = line.end;
  const floor =
    last === undefined
      ? line.start
      : last.image.startsWith('/*') || last.image.startsWith('"')
        ? endOf(last)
        : last.startOffset;
  while (end > floor && blank.test(text[end - 1] as string)) end--;
  change(end, line.end, '');
}

function isEmpty(text: string, line: Line): boolean {
  return line.tokens.length === 0 && skipBlank(text, line.start, line.end) === line.end;
}

function skipBlank(text: string, from: number, to: number): number {
  let i = from;
  while (i < to && blank.test(text[i] as string)) i++;
  return i;
}

/** Index of the first token of a block comment that is not closed: what follows is prose that somebody is writing. */
function openComment(tokens: readonly IToken[]): number | undefined {
  const found = tokens.findIndex(
    (token, i) =>
      token.image === '/' && tokens[i + 1]?.image === '*' && tokens[i + 1]?.startOffset === token.startOffset + 1,
  );
  return found < 0 ? undefined : found;
}

function lineEndOf(tokens: readonly IToken[]): string {
  return tokens.find(isNewline)?.image ?? '\n';
}

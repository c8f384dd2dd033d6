import type { IToken } from 'chevrotain';
import { balanced, entriesOf } from '../grammar/braces.ts';
import type { TokenKinds } from '../grammar/tokens.ts';
import { continues, headOf, isComment, type Line, linesOf } from './lines.ts';

/** Lines counted from zero; the first stays in sight, the last is hidden with those between. */
export interface Folding {
  readonly first: number;
  readonly last: number;
  readonly kind?: 'comment' | 'region';
}

const regionBegins = /^\/\/\s*#?region\b/;
const regionEnds = /^\/\/\s*#?endregion\b/;

/** What can be folded: blocks, long statements that go on over lines, comments, and regions marked in comments. */
export function foldingsOf(text: string, tokens: readonly IToken[], kinds: TokenKinds): Folding[] {
  const lines = linesOf(text, tokens);
  const all = [...blocks(text, tokens, kinds), ...longStatements(lines), ...comments(lines), ...regions(tokens)];
  return all.filter((fold) => fold.last > fold.first).sort((a, b) => a.first - b.first || b.last - a.last);
}

const lineOf = (token: IToken): number => (token.startLine ?? 1) - 1;
const lastLineOf = (token: IToken): number => (token.endLine ?? token.startLine ?? 1) - 1;

/** The line of the closing brace stays in sight. Where braces do not balance, each entry is read for itself. */
function blocks(text: string, tokens: readonly IToken[], kinds: TokenKinds): Folding[] {
  const spoken = tokens.filter((token) => !isComment(token));
  const folds: Folding[] = [];
  for (const entry of balanced(spoken, kinds) ? [spoken] : entriesOf(text, spoken)) {
    const open: IToken[] = [];
    for (const token of entry) {
      if (token.tokenType === kinds.openBrace) open.push(token);
      else if (token.tokenType === kinds.closeBrace) {
        const begin = open.pop();
        if (begin !== undefined) folds.push({ first: lineOf(begin), last: lineOf(token) - 1 });
      }
    }
  }
  return folds;
}

function longStatements(lines: readonly Line[]): Folding[] {
  const folds: Folding[] = [];
  let first: IToken | undefined;
  let last: IToken | undefined;
  const close = (): void => {
    if (first !== undefined && last !== undefined) folds.push({ first: lineOf(first), last: lineOf(last) });
  };
  for (const line of lines) {
    const head = headOf(line);
    if (head === undefined) continue;
    if (continues(line)) {
      last = head;
      continue;
    }
    close();
    first = head;
    last = undefined;
  }
  close();
  return folds;
}

function comments(lines: readonly Line[]): Folding[] {
  const folds: Folding[] = [];
  let run: { first: number; last: number } | undefined;
  const close = (): void => {
    if (run !== undefined) folds.push({ ...run, kind: 'comment' });
    run = undefined;
  };
  for (const line of lines) {
    const only = line.tokens.length === 1 && headOf(line) === undefined ? (line.tokens[0] as IToken) : undefined;
    const isRun =
      only?.image.startsWith('//') === true && !regionBegins.test(only.image) && !regionEnds.test(only.image);
    if (!isRun) close();
    else if (run === undefined) run = { first: lineOf(only as IToken), last: lineOf(only as IToken) };
    else run.last = lineOf(only as IToken);
    for (const token of line.tokens) {
      if (token.image.startsWith('/*')) folds.push({ first: lineOf(token), last: lastLineOf(token), kind: 'comment' });
    }
  }
  close();
  return folds;
}

function regions(tokens: readonly IToken[]): Folding[] {
  const folds: Folding[] = [];
  const open: number[] = [];
  for (const token of tokens) {
    if (regionBegins.test(token.image)) open.push(lineOf(token));
    else if (regionEnds.test(token.image)) {
      const first = open.pop();
      if (first !== undefined) folds.push({ first, last: lineOf(token), kind: 'region' });
    }
  }
  return folds;
}

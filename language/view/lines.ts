import type { IToken } from 'chevrotain';
import { endOf, isNewline } from '../grammar/tokens.ts';

/** One line of the text as it is typed; a block comment that runs over lines belongs to the line that it begins on. */
export interface Line {
  /** offset of its first character */
  readonly start: number;
  /** offset behind its last character, the line end not counted */
  readonly end: number;
  /** offset behind its line end; equal to `end` for the last line */
  readonly next: number;
  /** words, signs and comments in the order of the text, without the line end */
  readonly tokens: readonly IToken[];
}

/** The lines of a text from its plain tokens (`LayupLexer.plainTokens`, comments among them). */
export function linesOf(text: string, tokens: readonly IToken[], from = 0): Line[] {
  const lines: Line[] = [];
  let start = from;
  let own: IToken[] = [];
  for (const token of tokens) {
    if (!isNewline(token)) {
      own.push(token);
      continue;
    }
    lines.push({ start, end: token.startOffset, next: endOf(token), tokens: own });
    start = endOf(token);
    own = [];
  }
  lines.push({ start, end: text.length, next: text.length, tokens: own });
  return lines;
}

export const isComment = (token: IToken): boolean => token.image.startsWith('//') || token.image.startsWith('/*');

/** The first word or sign of a line that is no comment. */
export function headOf(line: Line): IToken | undefined {
  return line.tokens.find((token) => !isComment(token));
}

/** The line goes on with the statement of the line before it. */
export const continues = (line: Line): boolean => headOf(line)?.image === ',';

/** The lines between which nothing but comments and empty lines stand, from a line on: the first with a word or a sign. */
export function nextSpeakingLine(lines: readonly Line[], after: number): Line | undefined {
  for (let i = after + 1; i < lines.length; i++) {
    const line = lines[i] as Line;
    if (headOf(line) !== undefined) return line;
  }
  return undefined;
}

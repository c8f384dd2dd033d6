import type { IToken } from 'chevrotain';
import { isNewline } from './tokens.ts';

/** A line that begins with a comma goes on with the statement before it; comments may stand between (they are no tokens). */
export function joinContinuedLines(tokens: readonly IToken[]): IToken[] {
  const out: IToken[] = [];
  for (const token of tokens) {
    if (token.image === ',') while (out.length > 0 && isNewline(out[out.length - 1] as IToken)) out.pop();
    out.push(token);
  }
  return out;
}

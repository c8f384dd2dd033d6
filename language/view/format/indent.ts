import type { IToken } from 'chevrotain';
import { balanced, entriesOf } from '../../grammar/braces.ts';
import { endOf, type TokenKinds } from '../../grammar/tokens.ts';
import { continues, headOf, isComment, type Line, nextSpeakingLine } from '../lines.ts';

/** Spaces of a block, and of a line that goes on with the one before it. */
export const INDENT = 2;

/**
 * The indentation of each line in spaces: the depth of its block, and one step more where it goes on with the line before.
 * Undefined where it stays as it is: an entry whose braces do not balance has no depth to go by.
 */
export function indentsOf(
  text: string,
  tokens: readonly IToken[],
  lines: readonly Line[],
  kinds: TokenKinds,
): (number | undefined)[] {
  const isUnbalanced = unbalancedPlaces(text, tokens, kinds);
  let depth = 0;
  return lines.map((line, i) => {
    if (isUnbalanced(line.tokens[0]?.startOffset ?? line.start)) {
      depth = 0;
      return undefined;
    }
    const indent = Math.max(0, depth - countClosing(line, kinds)) * INDENT + (goesOn(lines, i) ? INDENT : 0);
    for (const token of line.tokens) {
      if (token.tokenType === kinds.openBrace) depth++;
      else if (token.tokenType === kinds.closeBrace) depth--;
    }
    return indent;
  });
}

/** Tells of growing offsets whether they lie in an entry whose braces do not balance. A text that balances as a whole has none. */
function unbalancedPlaces(text: string, tokens: readonly IToken[], kinds: TokenKinds): (offset: number) => boolean {
  const spoken = tokens.filter((token) => !isComment(token));
  if (balanced(spoken, kinds)) return () => false;
  const stretches = entriesOf(text, spoken)
    .filter((entry) => !balanced(entry, kinds))
    .map((entry) => ({ start: (entry[0] as IToken).startOffset, end: endOf(entry[entry.length - 1] as IToken) }));
  let i = 0;
  return (offset) => {
    while (i < stretches.length && offset >= (stretches[i] as { end: number }).end) i++;
    return i < stretches.length && offset >= (stretches[i] as { start: number }).start;
  };
}

function countClosing(line: Line, kinds: TokenKinds): number {
  let count = 0;
  for (const token of line.tokens) {
    if (isComment(token)) continue;
    if (token.tokenType !== kinds.closeBrace) break;
    count++;
  }
  return count;
}

/** A line that begins with a comma, or a comment line between a statement and such a line. */
function goesOn(lines: readonly Line[], index: number): boolean {
  const line = lines[index] as Line;
  if (headOf(line) !== undefined) return continues(line);
  if (line.tokens.length === 0) return false;
  const next = nextSpeakingLine(lines, index);
  return next !== undefined && continues(next);
}

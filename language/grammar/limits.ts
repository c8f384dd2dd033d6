import type { IToken } from 'chevrotain';
import { text, type Words } from '../../calc/figure/figure.ts';
import { endOf, isNewline, type TokenProblem } from './tokens.ts';

/** Larger texts are not read; about 25,000 lines. A shop's whole book is far below. */
export const longestText = 1_000_000;
/** No character of UTF-8 takes more bytes: this much of a file is at least one character more than is ever parsed. */
export const mostBytes = 4 * (longestText + 1);
/** The parser goes one call deeper a bracket; honest recipes stay below ten. */
export const deepestNesting = 48;
/** Beyond this a line is no recipe line; a polygon of 300 points on one line is below. */
export const longestLine = 4_000;

/** Comments of one text; more are read over and not kept. */
export const mostComments = 20_000;
/** Braces missing or too many that are told of one text; nobody mends more at once. */
export const mostBraceProblems = 500;
/** Recipes or materials that are `like` one another, one behind the other; no shop has a chain of ten. */
export const longestLikeness = 64;

/** Leaves out what stands deeper than `deepestNesting` brackets and past `longestLine` tokens of one line, and says so. */
export function keepWithinLimits(tokens: readonly IToken[], problems: TokenProblem[]): IToken[] {
  const out: IToken[] = [];
  let braces = 0;
  let brackets = 0;
  let onLine = 0;
  let deepReported = false;
  let lineReported = false;
  for (const token of tokens) {
    const image = token.image;
    if (isNewline(token)) {
      onLine = 0;
      // round brackets never run over a line end
      brackets = 0;
      lineReported = false;
    } else onLine++;
    if (image === '}') braces = Math.max(0, braces - 1);
    const tooDeep = braces + brackets >= deepestNesting;
    const leaveOut = (tooDeep && (image === '{' || image === '(')) || (braces >= deepestNesting && image === '}');
    if (image === '{') braces++;
    else if (image === '(') brackets++;
    else if (image === ')') {
      if (brackets + braces > deepestNesting) {
        brackets--;
        continue;
      }
      brackets = Math.max(0, brackets - 1);
    }
    if (leaveOut) {
      if (!deepReported)
        problems.push(
          problem(
            token,
            text('brackets are nested deeper than {most}: what stands inside is not read', { most: deepestNesting }),
          ),
        );
      deepReported = true;
      continue;
    }
    if (onLine > longestLine && !isNewline(token)) {
      if (!lineReported)
        problems.push(
          problem(
            token,
            text('the line has more than {most} words and signs: the rest of it is not read', { most: longestLine }),
          ),
        );
      lineReported = true;
      continue;
    }
    out.push(token);
  }
  return out;
}

function problem(token: IToken, message: Words): TokenProblem {
  return { rule: 'line/not-understood', message, offset: token.startOffset, length: endOf(token) - token.startOffset };
}

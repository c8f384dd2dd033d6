import type { IToken } from 'chevrotain';
import { connectives } from '../../grammar/connectives.ts';
import { isComment } from '../lines.ts';

/** What stands between two words or signs of one line: nothing, one space, or what is typed. */
export type Space = 'none' | 'one' | 'kept';

const comparisons: ReadonlySet<string> = new Set(['<=', '>=', '<', '>', '=']);
const binary: ReadonlySet<string> = new Set([...comparisons, '+', '*', '+-', '±']);
const isNumber = (token: IToken | undefined): boolean => token !== undefined && /^\d/.test(token.image);
const isNameOrNumber = (token: IToken | undefined): boolean => token !== undefined && /^[\p{L}\d_°]/u.test(token.image);
const isPlainNumber = (token: IToken | undefined): boolean => token?.tokenType.name === 'NUMBER';

/** Two neighbours of a line with those beside them, and whether they touch as typed. */
export interface Gap {
  readonly before?: IToken;
  readonly left: IToken;
  readonly right: IToken;
  readonly after?: IToken;
  readonly glued: boolean;
  /** the left one touches what is before it, the right one what is after it */
  readonly leftGlued: boolean;
  readonly rightGlued: boolean;
}

/**
 * The space that the notation wants between two neighbours. Taking a space away never makes one token of two, so that the
 * text reads the same before and after.
 */
export function spaceBetween(gap: Gap): Space {
  const { left, right, before, after, glued } = gap;
  if (isComment(left) || isComment(right)) return 'kept';
  if (right.image === ',' || right.image === ')') return 'none';
  if (left.image === '(') return 'none';
  if (left.image === '{' && right.image === '}') return 'none';
  if (left.image === '/' || right.image === '/') return aroundStroke(gap);
  if (left.image === '.' || right.image === '.') return glued ? 'none' : 'one';
  if (right.image === ':') return isPlainNumber(left) && isPlainNumber(after) ? 'none' : 'kept';
  if (left.image === ':') return isPlainNumber(before) && isPlainNumber(right) ? 'none' : 'kept';
  if (left.image === '-') return behindMinus(gap);
  if (right.image === '-') return beforeMinus(gap);
  return 'one';
}

/** A minus that can only be a sign: nothing that could be subtracted from stands before it. */
function isSign(before: IToken | undefined): boolean {
  if (before === undefined) return true;
  const image = before.image;
  return (
    image === ',' || image === '(' || image === '/' || image === '{' || binary.has(image) || connectives.has(image)
  );
}

function behindMinus({ before, right, glued, leftGlued }: Gap): Space {
  if (isSign(before)) return isNumber(right) ? 'none' : 'kept';
  // `few-pleats`, `2026-05`: one name or date in several pieces; `stitched -45 deg`: a sign
  return glued ? 'none' : leftGlued && isNumber(before) && isNumber(right) ? 'kept' : 'one';
}

function beforeMinus({ left, after, glued, rightGlued }: Gap): Space {
  if (left.image === '(') return 'none';
  if (isSign(left)) return 'one';
  if (!glued) return 'one';
  return (rightGlued && isNameOrNumber(after)) || isNumber(left) ? 'none' : 'one';
}

/** `2026/05` stays as typed; `/ *` would begin a comment. Elsewhere a stroke of its own divides. */
function aroundStroke({ before, left, right, after, glued }: Gap): Space {
  const [numerator, denominator] = left.image === '/' ? [before, right] : [left, after];
  if (glued && isNumber(numerator) && isNumber(denominator)) return 'kept';
  return 'one';
}

import type { IToken } from 'chevrotain';
import { text as words } from '../../calc/figure/figure.ts';
import { mostBraceProblems } from './limits.ts';
import { endOf, inserted, isNewline, type TokenKinds, type TokenProblem } from './tokens.ts';

/** Words that open a block when they begin a line. */
const blockHeads: ReadonlySet<string> = new Set(
  `shop fibre fabric prepreg resin gelcoat catalyst paste core consumable tool recipe record part stack process load size
   repeat kit infuse cure postcure`.split(/\s+/),
);
/** Words that begin an entry of the book. */
export const entryHeads: ReadonlySet<string> = new Set(
  'shop fibre fabric prepreg resin gelcoat catalyst paste core consumable tool recipe record'.split(' '),
);

interface OpenBlock {
  readonly indent: number;
  readonly head: IToken;
}

/** Puts a line end before a `}` that shares its line, so that a block of one statement may stand on one line. */
export function endLinesBeforeClosingBraces(tokens: readonly IToken[], kinds: TokenKinds): IToken[] {
  const out: IToken[] = [];
  for (const token of tokens) {
    const previous = out[out.length - 1];
    if (token.tokenType === kinds.closeBrace && previous !== undefined && !isNewline(previous)) {
      if (previous.tokenType !== kinds.openBrace && previous.tokenType !== kinds.closeBrace) {
        out.push(inserted(kinds.newline, '', endOf(previous), previous));
      }
    }
    out.push(token);
  }
  return out;
}

/**
 * Where braces do not balance, the indentation says where a block ends; the mend is reported as a missing or surplus brace.
 * Entries whose braces balance are left alone, however they are indented. A text that balances as a whole is never touched.
 */
export function mendBraces(
  text: string,
  tokens: readonly IToken[],
  kinds: TokenKinds,
  problems: TokenProblem[],
): IToken[] {
  if (balanced(tokens, kinds)) return [...tokens];
  const out: IToken[] = [];
  for (const entry of entriesOf(text, tokens)) {
    for (const token of balanced(entry, kinds) ? entry : mendEntry(text, entry, kinds, problems)) out.push(token);
  }
  return out;
}

/** Every `}` closes a `{` before it, and none stays open. */
export function balanced(tokens: readonly IToken[], kinds: TokenKinds): boolean {
  let depth = 0;
  for (const token of tokens) {
    if (token.tokenType === kinds.openBrace) depth++;
    else if (token.tokenType === kinds.closeBrace && --depth < 0) return false;
  }
  return depth === 0;
}

/** The tokens of each entry: a word that opens entries, at the very beginning of a line, begins the next one. */
export function entriesOf(text: string, tokens: readonly IToken[]): IToken[][] {
  const entries: IToken[][] = [[]];
  let lineBegins = true;
  for (const token of tokens) {
    if (lineBegins && entryHeads.has(token.image) && indentAt(text, token.startOffset) === 0) entries.push([]);
    lineBegins = isNewline(token);
    entries[entries.length - 1]?.push(token);
  }
  return entries;
}

function mendEntry(text: string, tokens: readonly IToken[], kinds: TokenKinds, problems: TokenProblem[]): IToken[] {
  const out: IToken[] = [];
  const open: OpenBlock[] = [];
  let head: OpenBlock | undefined;
  let lineBegins = true;
  let first: IToken | undefined;
  /** of the line that is being read */
  let indent = 0;

  const tell = (problem: TokenProblem): void => {
    if (problems.length < mostBraceProblems) problems.push(problem);
  };

  const lastWritten = (): IToken | undefined => {
    for (let i = out.length - 1; i >= 0; i--) if (!isNewline(out[i] as IToken)) return out[i];
    return undefined;
  };
  const closeTop = (): void => {
    const block = open.pop();
    const last = lastWritten();
    if (block === undefined || last === undefined) return;
    if (!isNewline(out[out.length - 1] as IToken)) out.push(inserted(kinds.newline, '', endOf(last), last));
    out.push(inserted(kinds.closeBrace, '', endOf(last), last), inserted(kinds.newline, '', endOf(last), last));
    if (problems.length >= mostBraceProblems) return;
    const at = placeOfMissingClose(text, endOf(last), block.indent);
    tell({
      rule: 'line/missing-brace',
      message: words('a } is missing here: the block `{block}` is not closed', { block: block.head.image }),
      offset: at,
      length: 0,
      related: { offset: block.head.startOffset, length: block.head.image.length, message: 'this block is not closed' },
    });
  };

  for (const token of tokens) {
    const newline = isNewline(token);
    if (lineBegins && !newline) {
      first = token;
      indent = indentAt(text, token.startOffset);
      if (token.tokenType === kinds.closeBrace) {
        while (open.length > 0 && indent < (open[open.length - 1] as OpenBlock).indent) closeTop();
        if (open.length === 0 || indent > (open[open.length - 1] as OpenBlock).indent) {
          tell(surplus(token));
          lineBegins = false;
          continue;
        }
      } else {
        if (head !== undefined && indent > head.indent) openAfter(head);
        while (open.length > 0 && indent <= (open[open.length - 1] as OpenBlock).indent) closeTop();
      }
      head = blockHeads.has(token.image) ? { indent, head: token } : undefined;
    } else if (token.tokenType === kinds.closeBrace && open.length === 0) {
      tell(surplus(token));
      continue;
    }
    if (token.tokenType === kinds.openBrace) {
      head = undefined;
      open.push({ indent, head: first ?? token });
    } else if (token.tokenType === kinds.closeBrace) open.pop();
    lineBegins = newline;
    out.push(token);
  }
  while (open.length > 0) closeTop();
  return out;

  function openAfter(block: OpenBlock): void {
    let i = out.length;
    while (i > 0 && isNewline(out[i - 1] as IToken)) i--;
    const last = out[i - 1] ?? block.head;
    out.splice(i, 0, inserted(kinds.openBrace, '', endOf(last), last));
    open.push(block);
    tell({
      rule: 'line/missing-brace',
      message: words('a { is missing at the end of this line: what is indented below belongs to `{block}`', {
        block: block.head.image,
      }),
      offset: block.head.startOffset,
      length: endOf(last) - block.head.startOffset,
    });
  }
}

function surplus(token: IToken): TokenProblem {
  return {
    rule: 'line/surplus-brace',
    message: 'this } closes nothing: one brace too many',
    offset: token.startOffset,
    length: 1,
  };
}

/** On the empty line behind the block where there is one (a brace that was deleted left it), else behind its last word. */
function placeOfMissingClose(text: string, end: number, indent: number): number {
  const lineEnd = text.indexOf('\n', end);
  if (lineEnd < 0) return end;
  const next = text.indexOf('\n', lineEnd + 1);
  const line = text.slice(lineEnd + 1, next < 0 ? text.length : next);
  return line.trim() === '' && next >= 0 ? lineEnd + 1 + Math.min(indent, line.replace('\r', '').length) : end;
}

/** Width of the white space that the line of an offset begins with. */
export function indentAt(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start--;
  let i = start;
  while (text[i] === ' ' || text[i] === '\t') i++;
  return i - start;
}

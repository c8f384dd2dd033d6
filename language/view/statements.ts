import type { IToken } from 'chevrotain';
import { entryHeads } from '../grammar/braces.ts';
import { endOf, isNewline } from '../grammar/tokens.ts';

/** A line of the notation with the lines that go on with it: its words and signs, and the blocks that it stands in. */
export interface Statement {
  readonly tokens: readonly IToken[];
  /** the statements whose braces it stands in, outermost first */
  readonly blocks: readonly Statement[];
}

/** The statements of a token list without comments, in order; braces as the lexer has mended them. */
export function statementsOf(tokens: readonly IToken[]): Statement[] {
  const statements: Statement[] = [];
  let blocks: readonly Statement[] = [];
  let own: IToken[] = [];
  const close = (): void => {
    if (own.length > 0) statements.push({ tokens: own, blocks });
    own = [];
  };
  for (const token of tokens) {
    if (token.image === '{') {
      const head: Statement = { tokens: own, blocks };
      statements.push(head);
      own = [];
      blocks = [...blocks, head];
    } else if (token.image === '}') {
      close();
      blocks = blocks.slice(0, -1);
    } else if (isNewline(token)) close();
    else own.push(token);
  }
  close();
  return statements;
}

/** Statements without words are the heads of blocks that have none. */
export const headWord = (statement: Statement | undefined): string => statement?.tokens[0]?.image ?? '';

/** The words and signs between the commas of a statement; commas inside `(...)` divide nothing. */
export function clausesOf(tokens: readonly IToken[]): IToken[][] {
  const clauses: IToken[][] = [[]];
  let brackets = 0;
  for (const token of tokens) {
    if (token.image === '(') brackets++;
    else if (token.image === ')') brackets--;
    if (token.image === ',' && brackets <= 0) clauses.push([]);
    else (clauses[clauses.length - 1] as IToken[]).push(token);
  }
  return clauses;
}

/** Where the entry begins and ends that an offset stands in: the words that open entries, at the beginning of a line. */
export function entryAround(text: string, offset: number): { readonly start: number; readonly end: number } {
  const lineEnd = text.indexOf('\n', offset);
  let start = 0;
  let end = text.length;
  heads.lastIndex = 0;
  for (let found = heads.exec(text); found !== null; found = heads.exec(text)) {
    if (found.index <= offset && (lineEnd < 0 || found.index <= lineEnd)) start = found.index;
    else if (found.index > offset) {
      end = found.index;
      break;
    }
  }
  // a word in a comment begins no entry: then the whole text is read
  const opened = text.lastIndexOf('/*', start);
  return opened >= 0 && text.indexOf('*/', opened) >= start ? { start: 0, end: text.length } : { start, end };
}

const heads = new RegExp(`^(?:${[...entryHeads].join('|')})\\b`, 'gm');

export const touches = (token: IToken, offset: number): boolean =>
  token.startOffset <= offset && offset <= endOf(token);

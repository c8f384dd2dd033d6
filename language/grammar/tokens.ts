import type { IToken, TokenType, TokenTypeDictionary } from 'chevrotain';
import type { Words } from '../../calc/figure/figure.ts';

/** The few token kinds that the passes over the token list look at. */
export interface TokenKinds {
  readonly newline: TokenType;
  readonly openBrace: TokenType;
  readonly closeBrace: TokenType;
}

export function tokenKinds(definition: TokenTypeDictionary): TokenKinds {
  const kind = (name: string): TokenType => {
    const found = definition[name];
    if (found === undefined) throw new Error(`the grammar has no token ${name}`);
    return found;
  };
  return { newline: kind('NL'), openBrace: kind('{'), closeBrace: kind('}') };
}

/** What the lexer found, beside its errors; ends up as a finding of the rule named. */
export interface TokenProblem {
  readonly rule: string;
  readonly message: Words;
  readonly offset: number;
  readonly length: number;
  readonly related?: { readonly offset: number; readonly length: number; readonly message: Words };
}

export const isNewline = (token: IToken): boolean => token.tokenType.name === 'NL';

/** A token that is not in the text, without width, at an offset. */
export function inserted(kind: TokenType, image: string, offset: number, beside: IToken): IToken {
  return {
    image,
    startOffset: offset,
    endOffset: offset - 1,
    startLine: beside.endLine ?? beside.startLine ?? 1,
    endLine: beside.endLine ?? beside.startLine ?? 1,
    startColumn: (beside.endColumn ?? beside.startColumn ?? 0) + 1,
    endColumn: beside.endColumn ?? beside.startColumn ?? 0,
    tokenTypeIdx: kind.tokenTypeIdx ?? 0,
    tokenType: kind,
  };
}

export const endOf = (token: IToken): number => (token.endOffset ?? token.startOffset) + 1;

import { Lexer, type TokenType } from 'chevrotain';
import { DefaultTokenBuilder, type GrammarAST, type Stream } from 'langium';
import { connectives } from './connectives.ts';

/** Makes every word-like keyword also match where a name is expected: words of the notation are not reserved. */
export class SoftWordTokenBuilder extends DefaultTokenBuilder {
  protected override buildTerminalTokens(rules: Stream<GrammarAST.AbstractRule>): TokenType[] {
    const tokens = super.buildTerminalTokens(rules);
    const name = tokens.find((t) => t.name === 'ID');
    const word = tokens.find((t) => t.name === 'WORD');
    if (name && word) {
      name.PATTERN = Lexer.NA;
      word.CATEGORIES = [name];
    }
    return tokens;
  }

  protected override findLongerAlt(keyword: GrammarAST.Keyword, terminals: TokenType[]): TokenType[] {
    return super.findLongerAlt(
      keyword,
      terminals.filter((t) => t.PATTERN !== Lexer.NA),
    );
  }

  protected override buildKeywordToken(
    keyword: GrammarAST.Keyword,
    terminals: TokenType[],
    ignoreCase: boolean,
  ): TokenType {
    const token = super.buildKeywordToken(keyword, terminals, ignoreCase);
    const name = terminals.find((t) => t.name === 'ID');
    if (name && !connectives.has(keyword.value) && /^[a-z_]+$/.test(keyword.value)) token.CATEGORIES = [name];
    return token;
  }
}

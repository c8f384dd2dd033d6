import { EarlyExitException, type IToken, NoViableAltException, type TokenType } from 'chevrotain';
import type { LangiumParser } from 'langium';

/** The parts of Chevrotain's recovery that are replaced; it has no public types for them. */
interface Recovery {
  LA(howMuch: number): IToken;
  SAVE_ERROR(error: Error): Error;
  SKIP_TOKEN(): IToken;
  consumeToken(): void;
  flattenFollowSet(): TokenType[];
  tokenMatcher(token: IToken, type: TokenType): boolean;
  addToResyncTokens(token: IToken, tokens: IToken[]): void;
  canRecoverWithSingleTokenDeletion(expected: TokenType): boolean;
  canTokenTypeBeInsertedInRecovery(type: TokenType): boolean;
  tryInRuleRecovery(expected: TokenType, follows: TokenType[]): IToken;
  findReSyncTokenType(): TokenType;
  reSyncTo(type: TokenType): IToken[];
  raiseNoAltException(...args: unknown[]): never;
  raiseEarlyExitException(...args: unknown[]): never;
}

/**
 * An error never ends before its line does, and never eats a line end or a brace.
 * The two exceptions are raised with a plain text: Chevrotain's own lists every possible sequence of tokens, which in effect
 * never ends where an alternative may begin with any word.
 */
export function keepErrorsOnTheirLine(parser: LangiumParser): void {
  const recovery = (parser as unknown as { wrapper: Recovery }).wrapper;
  const deletes = recovery.canRecoverWithSingleTokenDeletion;
  const mendsInRule = recovery.tryInRuleRecovery;
  let skip = 0;

  recovery.raiseNoAltException = function (this: Recovery): never {
    throw this.SAVE_ERROR(new NoViableAltException('not understood', this.LA(1), this.LA(0)));
  };
  recovery.raiseEarlyExitException = function (this: Recovery): never {
    throw this.SAVE_ERROR(new EarlyExitException('not understood', this.LA(1), this.LA(0)));
  };
  recovery.canRecoverWithSingleTokenDeletion = function (this: Recovery, expected: TokenType): boolean {
    const next = this.LA(1).tokenType.name;
    if (expected.name === '{') return braceOnLine(this) > 0;
    return next === 'NL' || next === '{' || next === '}' ? false : deletes.call(this, expected);
  };
  // A head without its block must not take the lines below for one: braces are mended by indentation, before the parser.
  recovery.canTokenTypeBeInsertedInRecovery = (type: TokenType): boolean => type.name !== '{';
  // What stands between a head and its brace is left out, be it one word or more.
  recovery.tryInRuleRecovery = function (this: Recovery, expected: TokenType, follows: TokenType[]): IToken {
    const ahead = expected.name === '{' ? braceOnLine(this) : 0;
    if (ahead === 0) return mendsInRule.call(this, expected, follows);
    for (let n = 0; n < ahead; n++) this.SKIP_TOKEN();
    const brace = this.LA(1);
    this.consumeToken();
    return brace;
  };
  // On the line of the error only its end may match; behind it anything of the follow set.
  recovery.findReSyncTokenType = function (this: Recovery): TokenType {
    const follow = this.flattenFollowSet();
    let ended = false;
    for (let k = 1; ; k++) {
      const token = this.LA(k);
      const name = token.tokenType.name;
      if (ended || name === 'NL' || name === '}' || name === 'EOF') {
        // outermost rules come first in the set: the innermost that can go on is wanted
        const hit = follow.findLast((type) => this.tokenMatcher(token, type));
        if (hit !== undefined || name === 'EOF') {
          skip = k - 1;
          return hit ?? token.tokenType;
        }
      }
      if (name === 'NL') ended = true;
    }
  };
  recovery.reSyncTo = function (this: Recovery): IToken[] {
    const skipped: IToken[] = [];
    this.findReSyncTokenType();
    for (let n = skip; n > 0; n--) this.addToResyncTokens(this.SKIP_TOKEN(), skipped);
    return skipped.slice(0, -1);
  };
}

/** How many tokens stand before the next `{` of the line; 0 where there is none. */
function braceOnLine(parser: Recovery): number {
  for (let k = 1; ; k++) {
    const name = parser.LA(k).tokenType.name;
    if (name === '{') return k - 1;
    if (name === 'NL' || name === '}' || name === 'EOF') return 0;
  }
}

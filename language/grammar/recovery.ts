import { type IToken, NoViableAltException, EarlyExitException, type TokenType } from 'chevrotain';
import type { LangiumParser } from 'langium';

/** The parts of Chevrotain's recovery that are replaced; it has no public types for them. */
interface Recovery {
  LA(howMuch: number): IToken;
  SAVE_ERROR(error: Error): Error;
  SKIP_TOKEN(): IToken;
  flattenFollowSet(): TokenType[];
  tokenMatcher(token: IToken, type: TokenType): boolean;
  addToResyncTokens(token: IToken, tokens: IToken[]): void;
  canRecoverWithSingleTokenDeletion(expected: TokenType): boolean;
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
  let skip = 0;

  recovery.raiseNoAltException = function (this: Recovery): never {
    throw this.SAVE_ERROR(new NoViableAltException('not understood', this.LA(1), this.LA(0)));
  };
  recovery.raiseEarlyExitException = function (this: Recovery): never {
    throw this.SAVE_ERROR(new EarlyExitException('not understood', this.LA(1), this.LA(0)));
  };
  recovery.canRecoverWithSingleTokenDeletion = function (this: Recovery, expected: TokenType): boolean {
    const next = this.LA(1).tokenType.name;
    return next === 'NL' || next === '{' || next === '}' ? false : deletes.call(this, expected);
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

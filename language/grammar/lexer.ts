import type { ILexingError, IToken } from 'chevrotain';
import { DefaultLexer, type LexerResult, type LexingReport, type TokenizeOptions } from 'langium';
import { text as words } from '../../calc/figure/figure.ts';
import { keyOfText } from '../protocol/left-alone.ts';
import { endLinesBeforeClosingBraces, mendBraces } from './braces.ts';
import { joinContinuedLines } from './continuation.ts';
import { keepWithinLimits, longestText, mostComments } from './limits.ts';
import { type TokenProblem, tokenKinds } from './tokens.ts';

/** The lexer's report: what its passes mended or left out. */
export interface LayupLexingReport extends LexingReport {
  readonly problems: readonly TokenProblem[];
}

export function problemsOf(report: LexingReport | undefined): readonly TokenProblem[] {
  return (report as LayupLexingReport | undefined)?.problems ?? [];
}

/** Control characters that change the order in which a line is shown, and hide what it says. */
const hiddenDirections = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** What the formatter, folding and completion read. */
export interface PlainTokens {
  readonly plainTokens: (text: string) => readonly IToken[];
}

/** Reads the tokens, joins continued lines, mends braces and keeps to the limits of the parser. */
export class LayupLexer extends DefaultLexer implements PlainTokens {
  /** The words, signs, line ends and comments as they are typed, in the order of the text: nothing joined, mended or left out. */
  plainTokens(text: string): readonly IToken[] {
    if (text.length > longestText) return [];
    const { tokens, hidden } = super.tokenize(text);
    if (hidden.length === 0) return tokens;
    return [...tokens, ...hidden].sort((a, b) => a.startOffset - b.startOffset);
  }

  #leftAlone: ReadonlySet<string> = new Set();

  /** Texts that are not read, by their keys. */
  leaveAlone(keys: readonly string[]): void {
    this.#leftAlone = new Set(keys);
  }

  override tokenize(text: string, options?: TokenizeOptions): LexerResult {
    const problems: TokenProblem[] = [];
    if (this.#leftAlone.size > 0 && this.#leftAlone.has(keyOfText(text))) {
      problems.push({
        rule: 'line/not-understood',
        message: words('this text has brought the checker down twice: it is not read again until it is changed'),
        offset: 0,
        length: 1,
      });
      return { tokens: [], hidden: [], errors: [], report: reportOf(problems) };
    }
    if (text.length > longestText) {
      problems.push({
        rule: 'line/not-understood',
        message: words(
          'the file has {thousands} thousand characters; more than {most} thousand are not read: split it',
          { thousands: Math.round(text.length / 1000), most: longestText / 1000 },
        ),
        offset: 0,
        length: 1,
      });
      return { tokens: [], hidden: [], errors: [], report: reportOf(problems) };
    }
    const result = super.tokenize(text, options);
    const kinds = tokenKinds(this.tokenTypes);
    let tokens = joinContinuedLines(result.tokens);
    // Completion reads the text up to the cursor: its braces are open by nature.
    if (options?.mode !== 'partial') tokens = mendBraces(text, tokens, kinds, problems);
    tokens = endLinesBeforeClosingBraces(tokens, kinds);
    tokens = keepWithinLimits(tokens, problems);
    endLastLine(tokens, text);
    for (const found of text.matchAll(hiddenDirections)) {
      problems.push({
        rule: 'line/not-understood',
        message: 'a hidden character here changes the order in which the line is shown: delete it',
        offset: found.index,
        length: 1,
      });
    }
    return {
      ...result,
      tokens,
      hidden: result.hidden.slice(0, mostComments),
      errors: result.errors.map(plainWords),
      report: reportOf(problems),
    };

    /** The last line of a text may lack its line end. */
    function endLastLine(all: IToken[], source: string): void {
      const last = all[all.length - 1];
      if (last === undefined || last.tokenType === kinds.newline || last.tokenType === kinds.closeBrace) return;
      if (options?.mode === 'partial') return;
      all.push({
        ...last,
        image: '',
        startOffset: source.length,
        endOffset: source.length - 1,
        tokenType: kinds.newline,
        tokenTypeIdx: kinds.newline.tokenTypeIdx ?? 0,
      });
    }
  }
}

function reportOf(problems: readonly TokenProblem[]): LayupLexingReport {
  return { diagnostics: [], problems };
}

function plainWords(error: ILexingError): ILexingError {
  return { ...error, message: 'these signs have no meaning in the notation' };
}

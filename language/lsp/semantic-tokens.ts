import type { LangiumDocument } from 'langium';
import type { SemanticTokenProvider } from 'langium/lsp';
import type {
  SemanticTokens,
  SemanticTokensOptions,
  SemanticTokensParams,
  SemanticTokensRangeParams,
} from 'vscode-languageserver-protocol';
import type { Book } from '../grammar/generated/ast.ts';
import { type Highlight, type HighlightBook, highlightsOf } from '../view/tokens/index.ts';
import { HIGHLIGHTS, MODIFIERS } from '../view/tokens/sorts.ts';

const numbered = (names: readonly string[], number: (index: number) => number): Record<string, number> =>
  Object.fromEntries(names.map((name, i) => [name, number(i)]));

/** textDocument/semanticTokens */
export class LayupSemanticTokenProvider implements SemanticTokenProvider {
  readonly tokenTypes = numbered(HIGHLIGHTS, (i) => i);
  readonly tokenModifiers = numbered(MODIFIERS, (i) => 1 << i);
  readonly semanticTokensOptions: SemanticTokensOptions = {
    legend: { tokenTypes: [...HIGHLIGHTS], tokenModifiers: [...MODIFIERS] },
    full: { delta: false },
    range: true,
  };
  private readonly book: HighlightBook;

  constructor(book: HighlightBook) {
    this.book = book;
  }

  semanticHighlight(document: LangiumDocument, _params: SemanticTokensParams): SemanticTokens {
    return this.encode(highlightsOf(document.parseResult.value as Book, this.book));
  }

  semanticHighlightRange(document: LangiumDocument, { range }: SemanticTokensRangeParams): SemanticTokens {
    const inside = ({ line }: Highlight): boolean => line >= range.start.line && line <= range.end.line;
    return this.encode(highlightsOf(document.parseResult.value as Book, this.book).filter(inside));
  }

  semanticHighlightDelta(document: LangiumDocument): SemanticTokens {
    return this.encode(highlightsOf(document.parseResult.value as Book, this.book));
  }

  /** Five numbers a token, places relative to the token before. */
  private encode(highlights: readonly Highlight[]): SemanticTokens {
    const data: number[] = [];
    let line = 0;
    let character = 0;
    for (const token of highlights) {
      const modifiers = token.modifiers.reduce((bits, modifier) => bits | (this.tokenModifiers[modifier] ?? 0), 0);
      const start = token.line === line ? token.character - character : token.character;
      data.push(token.line - line, start, token.length, this.tokenTypes[token.type] ?? 0, modifiers);
      ({ line, character } = token);
    }
    return { data };
  }
}

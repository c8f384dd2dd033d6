import { AstUtils } from 'langium';
import type { MoreServices } from '../book/services.ts';
import { isStock } from '../book/stock.ts';
import type { LayupLexer } from '../grammar/lexer.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule } from '../rules/rule.ts';
import { NamesOfBook } from '../view/complete/book-names.ts';
import { isVerbWord } from '../view/words.ts';
import { LayupCodeActions } from './code-actions.ts';
import { LayupCompletionProvider } from './complete.ts';
import { LayupDocumentSymbolProvider } from './document-symbols.ts';
import { LayupFoldingProvider } from './folding.ts';
import { LayupFormatter } from './format.ts';
import { LayupHoverProvider } from './hover.ts';
import { LayupSemanticTokenProvider } from './semantic-tokens.ts';

/** What the editor is shown. */
export const viewModule: MoreServices = {
  lsp: {
    CodeActionProvider: () => new LayupCodeActions(),
    CompletionProvider: (services) =>
      new LayupCompletionProvider({
        lexer: services.parser.Lexer as LayupLexer,
        names: new NamesOfBook(services),
        ruleNames: () => (rules as readonly Rule[]).map(({ name, title }) => ({ name, title })),
      }),
    DocumentSymbolProvider: () => new LayupDocumentSymbolProvider(),
    FoldingRangeProvider: (services) => new LayupFoldingProvider(services),
    Formatter: (services) => new LayupFormatter(services),
    HoverProvider: () => new LayupHoverProvider(),
    SemanticTokenProvider: () =>
      new LayupSemanticTokenProvider({
        isVerb: isVerbWord,
        isStock: (entry) => isStock(AstUtils.getDocument(entry).uri),
      }),
  },
};

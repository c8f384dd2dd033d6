import type { Module } from 'langium';
import type { LangiumServices, PartialLangiumServices } from 'langium/lsp';
import { LayupDocumentSymbolProvider } from './document-symbols.ts';
import { LayupFoldingProvider } from './folding.ts';
import { LayupFormatter } from './format.ts';

/** What the editor is shown. */
export const viewModule: Module<LangiumServices, PartialLangiumServices> = {
  lsp: {
    DocumentSymbolProvider: () => new LayupDocumentSymbolProvider(),
    FoldingRangeProvider: (services) => new LayupFoldingProvider(services),
    Formatter: (services) => new LayupFormatter(services),
  },
};

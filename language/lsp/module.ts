import type { Module } from 'langium';
import type { LangiumServices, PartialLangiumServices } from 'langium/lsp';
import { LayupFormatter } from './format.ts';

/** What the editor is shown. */
export const viewModule: Module<LangiumServices, PartialLangiumServices> = {
  lsp: {
    Formatter: (services) => new LayupFormatter(services),
  },
};

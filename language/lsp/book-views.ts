import type { AnalysisServices, WithAnalysis } from '../analysis/module.ts';
import type { MoreServices } from '../book/services.ts';
import { LayupHoverProvider } from './hover.ts';
import { LayupReferencesProvider } from './references.ts';
import { hoverBook } from './shown-book.ts';

/** What the editor is shown of the figures; takes the place of what knows the words alone. */
export const bookViewModule: MoreServices<AnalysisServices> = {
  lsp: {
    HoverProvider: (services) => new LayupHoverProvider(() => hovers(services)),
    ReferencesProvider: (services) => new LayupReferencesProvider(services),
  },
};

/** Pictures of pieces, cautions and the like: read when somebody rests on a word. */
const hovers = async (services: WithAnalysis) => (await import('./at-cursor.ts')).hoversOver(hoverBook(services));

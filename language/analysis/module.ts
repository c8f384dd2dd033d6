import { DocumentState, type LangiumDocument, type URI } from 'langium';
import type { LayupServices, MoreServices } from '../book/services.ts';
import { isStock } from '../book/stock.ts';
import { diagnosticsOf } from '../lsp/diagnostics.ts';
import { SteadyFindings } from '../lsp/steady-findings.ts';
import { typingIn } from '../lsp/tell-again.ts';
import type { Typing } from '../lsp/typing.ts';
import { rules } from '../rules/generated/rules.ts';
import { Runner } from '../rules/runner.ts';
import { Analysis, type StockPort } from './analysis.ts';

/** The analysis as a service beside those of the book. */
export interface AnalysisServices {
  readonly analysis: Analysis;
  readonly typing: Typing;
  readonly steady: SteadyFindings;
}

export type WithAnalysis = LayupServices & AnalysisServices;

export const analysisModule: MoreServices<AnalysisServices> = {
  analysis: (services) =>
    new Analysis({
      documents: services.shared.workspace.LangiumDocuments,
      stock: stockPort(services),
      drawings: services.shared.workspace.Drawings,
      runner: new Runner(rules),
      severities: () => services.settings.current.severities,
      touched: touchedIn(services),
    }),
  typing: (services) => typingIn(services),
  steady: (services) => new SteadyFindings(services.typing),
  findings: (services) => ({
    of: (document, token) => diagnosticsOf(services, document, token),
    alsoAffected: () => services.analysis.takeAffected(),
  }),
};

/** Gathers what may change the book: documents that come, go, are read anew or are linked; given out once. */
function touchedIn({ shared }: LayupServices): () => ReadonlySet<string> {
  const { DocumentBuilder, LangiumDocuments } = shared.workspace;
  let touched = new Set<string>(LangiumDocuments.all.map(({ uri }) => uri.toString()));
  const note = (uri: URI): void => {
    if (!isStock(uri)) touched.add(uri.toString());
  };
  DocumentBuilder.onUpdate((changed, deleted) => {
    for (const uri of [...changed, ...deleted]) note(uri);
  });
  for (const state of [DocumentState.Parsed, DocumentState.IndexedContent, DocumentState.Linked])
    DocumentBuilder.onDocumentPhase(state, ({ uri }) => note(uri));
  return () => {
    const given = touched;
    if (given.size > 0) touched = new Set();
    return given;
  };
}

function stockPort({ stock }: LayupServices): StockPort {
  return {
    *names(namespace) {
      for (const entry of stock.all(namespace)) yield entry.name;
    },
    document(namespace, name): LangiumDocument | undefined {
      const entry = stock.find(namespace, name);
      return entry === undefined ? undefined : stock.document(entry.documentUri);
    },
  };
}

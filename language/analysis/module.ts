import { DocumentState, type LangiumDocument } from 'langium';
import type { LayupServices, MoreServices } from '../book/services.ts';
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
      generation: generationOf(services),
    }),
  typing: (services) => typingIn(services),
  steady: (services) => new SteadyFindings(services.typing),
  findings: (services) => ({
    of: (document, token) => diagnosticsOf(services, document, token),
    alsoAffected: () => services.analysis.takeAffected(),
  }),
};

/** Counts what may change the book: a document that comes, goes, is read anew or is linked. */
function generationOf({ shared }: LayupServices): () => number {
  const { DocumentBuilder } = shared.workspace;
  let generation = 0;
  const count = (): void => {
    generation++;
  };
  DocumentBuilder.onUpdate(count);
  for (const state of [DocumentState.Parsed, DocumentState.IndexedContent, DocumentState.Linked])
    DocumentBuilder.onDocumentPhase(state, count);
  return () => generation;
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

import { DocumentState, URI } from 'langium';
import { CodeLensRefreshRequest, type Connection, InlayHintRefreshRequest } from 'vscode-languageserver';
import type { WithFigures } from './figures-module.ts';

/** Asks the editor to fetch again what stands beside a text when figures have changed and the text has not: a price, a setting. */
export function refreshFigures(connection: Connection, { shared, shownFigures, steady }: WithFigures): void {
  const { DocumentBuilder, LangiumDocuments } = shared.workspace;
  const able = { hints: false, lenses: false };
  shared.lsp.LanguageServer.onInitialize(({ capabilities: { workspace } }) => {
    able.hints = workspace?.inlayHint?.refreshSupport === true;
    able.lenses = workspace?.codeLens?.refreshSupport === true;
  });
  const changedElsewhere = (figures: (typeof shownFigures)['hints' | 'lenses']): boolean =>
    figures.uris.filter((uri) => {
      const document = LangiumDocuments.getDocument(URI.parse(uri));
      return document !== undefined && figures.hasChanged(document);
    }).length > 0;
  const refresh = (): void => {
    const requests = [
      ...(able.hints && changedElsewhere(shownFigures.hints) ? [InlayHintRefreshRequest.type] : []),
      ...(able.lenses && changedElsewhere(shownFigures.lenses) ? [CodeLensRefreshRequest.type] : []),
    ];
    for (const request of requests) {
      connection
        .sendRequest(request)
        .catch((error: unknown) => console.error('The editor did not fetch the figures again:', error));
    }
  };
  DocumentBuilder.onBuildPhase(DocumentState.Validated, refresh);
  // The lens counts the findings that the editor has been told.
  steady.onToldAgain(refresh);
}

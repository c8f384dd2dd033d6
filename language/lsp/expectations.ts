import { DocumentState } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import { isStock } from '../book/stock.ts';
import {
  type ExpectationsParams,
  type ExpectationsResult,
  expectationsRequest,
  type FiguresChanged,
  figuresChangedNotification,
  type RecipeFilesResult,
  recipeFilesRequest,
} from '../protocol/expectations.ts';
import { expectationsOf } from '../view/expectations.ts';
import { builtDocument } from './built.ts';
import { cardBook } from './shown-book.ts';

/** Request `laybook/expectations`, and the word that figures may have changed. */
export function serveExpectations(connection: Connection, services: WithAnalysis): void {
  connection.onRequest(expectationsRequest, async ({ uri }: ExpectationsParams, token): Promise<ExpectationsResult> => {
    const document = await builtDocument(services, uri, token);
    if (document === undefined) return { recipes: [] };
    const open = services.shared.workspace.TextDocuments.get(document.uri);
    return {
      ...(open === undefined ? {} : { version: document.textDocument.version }),
      ...expectationsOf(document, cardBook(services)),
    };
  });
  connection.onRequest(recipeFilesRequest, async (): Promise<RecipeFilesResult> => {
    const { LangiumDocuments, WorkspaceManager } = services.shared.workspace;
    await WorkspaceManager.ready;
    const own = LangiumDocuments.all.filter(({ uri }) => !isStock(uri));
    return { uris: own.map(({ uri }) => uri.toString()).toArray() };
  });
  // After the findings: then all that a change reaches has been gone through.
  services.shared.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, (documents) => {
    const uris = documents.filter(({ uri }) => !isStock(uri)).map(({ uri }) => uri.toString());
    if (uris.length === 0) return;
    const params: FiguresChanged = { uris };
    connection
      .sendNotification(figuresChangedNotification, params)
      .catch((error: unknown) => console.error('The editor could not be told of changed figures:', error));
  });
}

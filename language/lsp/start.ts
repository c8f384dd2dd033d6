import { type FileSystemProvider, URI } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { createLayupServices, type LayupServices, type MoreServices } from '../book/services.ts';
import { serveExplanations } from './explain.ts';
import { followFolders } from './folders.ts';
import { viewModule } from './module.ts';

/** Request `laybook/stockText`: the text of a file of the stock library, for the editor to show, read only. */
export const stockTextRequest = 'laybook/stockText';
export interface StockTextParams {
  readonly uri: string;
}
export interface StockTextResult {
  /** absent where there is no such file */
  readonly text?: string;
}

/** Serves the notation over a connection; the same in a process of its own and in a worker of a browser. */
export function startLayupServer<More = unknown>(
  connection: Connection,
  files: () => FileSystemProvider,
  ...more: readonly MoreServices<More>[]
): LayupServices & More {
  const { shared, layup } = createLayupServices<More>(
    { connection, fileSystemProvider: files },
    viewModule as MoreServices<More>,
    ...more,
  );
  connection.onRequest(
    stockTextRequest,
    ({ uri }: StockTextParams): StockTextResult => ({
      text: layup.stock.text(URI.parse(uri)),
    }),
  );
  serveExplanations(connection);
  // Severities and units change what every document is told, not what it says.
  layup.settings.onChange(() => {
    const { WorkspaceLock, WorkspaceManager, DocumentBuilder, LangiumDocuments } = shared.workspace;
    WorkspaceManager.ready
      .then(() =>
        WorkspaceLock.write((token) =>
          DocumentBuilder.build(LangiumDocuments.all.toArray(), { validation: true }, token),
        ),
      )
      .catch((error: unknown) => console.error('The settings could not be taken in:', error));
  });
  followFolders(shared);
  startLanguageServer(shared);
  return layup;
}

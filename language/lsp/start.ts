import { type FileSystemProvider, URI } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { type AnalysisServices, analysisModule, type WithAnalysis } from '../analysis/module.ts';
import { createLayupServices, type MoreServices } from '../book/services.ts';
import type { LayupLexer } from '../grammar/lexer.ts';
import { aliveRequest } from '../protocol/alive.ts';
import type { LeftAloneOption } from '../protocol/left-alone.ts';
import { bookViewModule } from './book-views.ts';
import { followCursor } from './cursor.ts';
import { type FigureServices, figuresModule } from './figures-module.ts';
import { followFolders } from './folders.ts';
import type { Machine } from './machine.ts';
import { viewModule } from './module.ts';
import { serveOwnRequests } from './own-requests.ts';
import { refreshFigures } from './refresh.ts';

/** Request `laybook/stockText`: the text of a file of the stock library, for the editor to show, read only. */
export const stockTextRequest = 'laybook/stockText';
export interface StockTextParams {
  readonly uri: string;
}
export interface StockTextResult {
  /** absent where there is no such file */
  readonly text?: string;
}

type Everything = AnalysisServices & FigureServices;

/** Serves the notation over a connection; the same in a process of its own and in a worker of a browser. */
export function startLayupServer(
  connection: Connection,
  files: () => FileSystemProvider,
  machine: Machine = {},
): WithAnalysis {
  const { shared, layup } = createLayupServices<Everything>(
    { connection, fileSystemProvider: files },
    viewModule as MoreServices<Everything>,
    analysisModule as MoreServices<Everything>,
    bookViewModule as MoreServices<Everything>,
    figuresModule,
  );
  shared.lsp.LanguageServer.onInitialize(({ initializationOptions }) => {
    const { leftAlone } = (initializationOptions ?? {}) as LeftAloneOption;
    if (Array.isArray(leftAlone)) (layup.parser.Lexer as LayupLexer).leaveAlone(leftAlone.map(String));
  });
  connection.onRequest(
    stockTextRequest,
    ({ uri }: StockTextParams): StockTextResult => ({
      text: layup.stock.text(URI.parse(uri)),
    }),
  );
  connection.onRequest(aliveRequest, () => null);
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
  serveOwnRequests(connection, layup, machine);
  refreshFigures(connection, layup);
  followCursor(connection, layup);
  followFolders(shared);
  startLanguageServer(shared);
  return layup;
}

/// <reference lib="dom" />
/** The language server in a web worker, for an editor that runs in a browser. */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { ClientFiles } from './lsp/client-files.ts';
import { startLayupServer } from './lsp/start.ts';

const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(self),
  new BrowserMessageWriter(self),
);

// A fault in one answer must not take away all the others: it is logged, and the server goes on.
const log = (kind: string, error: unknown) =>
  connection.console.error(`${kind}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
self.addEventListener('error', (event) => {
  event.preventDefault();
  log('Unhandled error', event.error);
});
self.addEventListener('unhandledrejection', (event) => {
  event.preventDefault();
  log('Unhandled rejection', event.reason);
});

startLayupServer(connection, () => new ClientFiles(connection));

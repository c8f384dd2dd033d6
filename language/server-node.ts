/** The language server as a process of its own. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { ClientFiles } from './lsp/client-files.ts';
import { DiskOrClientFiles } from './lsp/disk-or-client-files.ts';
import { startLayupServer } from './lsp/start.ts';

const connection = createConnection(ProposedFeatures.all);

// A fault in one answer must not take away all the others: it is logged, and the server goes on.
const log = (kind: string) => (error: unknown) =>
  connection.console.error(`${kind}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
process.on('uncaughtException', log('Unhandled error'));
process.on('unhandledRejection', log('Unhandled rejection'));

startLayupServer(connection, () => new DiskOrClientFiles(new ClientFiles(connection)));

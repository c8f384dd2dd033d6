import { type ChildProcess, spawn } from 'node:child_process';
import { EventEmitter, once } from 'node:events';
import path from 'node:path';
import {
  type ClientCapabilities,
  createProtocolConnection,
  type Diagnostic,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

const entry = path.resolve(import.meta.dirname, '../../language/server-node.ts');

/** The language server as a process of its own, spoken to as an editor does. */
export interface TestServer {
  readonly connection: ProtocolConnection;
  readonly process: ChildProcess;
  readonly initialized: InitializeResult;
  /** what the server wrote to its log */
  readonly log: readonly string[];
  /** The diagnostics of the next report on a document. */
  nextDiagnostics(uri: string): Promise<readonly Diagnostic[]>;
  /** Shuts the server down as the protocol says; the exit code. */
  stop(): Promise<number | null>;
}

export interface ServerOptions {
  readonly folders?: { readonly uri: string; readonly name: string }[];
  readonly capabilities?: ClientCapabilities;
  readonly settings?: unknown;
  /** a module that Node runs before the server */
  readonly before?: string;
}

export async function startServer({
  folders = [],
  capabilities = {},
  settings,
  before,
}: ServerOptions = {}): Promise<TestServer> {
  const first = before === undefined ? [] : ['--import', before];
  const child = spawn(process.execPath, [...first, entry, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const log: string[] = [];
  const reports = new EventEmitter().setMaxListeners(0);
  child.stderr.on('data', (text: Buffer) => log.push(text.toString()));
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
    log.push(message);
  });
  connection.onNotification(
    'textDocument/publishDiagnostics',
    ({ uri, diagnostics }: { uri: string; diagnostics: Diagnostic[] }) => {
      reports.emit(uri, diagnostics);
    },
  );
  connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) =>
    items.map(() => settings ?? null),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  const initialized = await connection.sendRequest(InitializeRequest.type, {
    processId: process.pid,
    rootUri: null,
    capabilities,
    workspaceFolders: folders,
  });
  await connection.sendNotification(InitializedNotification.type, {});
  return {
    connection,
    process: child,
    initialized,
    log,
    async nextDiagnostics(uri) {
      const [diagnostics] = (await once(reports, uri)) as [Diagnostic[]];
      return diagnostics;
    },
    async stop() {
      const exit = once(child, 'exit');
      await connection.sendRequest('shutdown');
      await connection.sendNotification('exit');
      const [code] = (await exit) as [number | null];
      connection.dispose();
      return code;
    },
  };
}

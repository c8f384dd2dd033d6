import { PassThrough } from 'node:stream';
import { setTimeout as pause } from 'node:timers/promises';
import { URI } from 'langium';
import { VirtualFileSystemProvider } from 'langium/test';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
  createProtocolConnection,
  type Diagnostic,
  InitializedNotification,
  type InitializeParams,
  InitializeRequest,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver-protocol/node';
import type { WithAnalysis } from '../../language/analysis/module.ts';
import { startLayupServer } from '../../language/lsp/start.ts';
import { type RulePageParams, type RulePageResult, rulePageRequest } from '../../language/protocol/explain.ts';
import { cursorNotification } from '../../language/protocol/typing.ts';
import { pages } from '../../language/rules/generated/pages.ts';

const folder = 'file:///book';
const uriOf = (name: string): string => `${folder}/${name}`;

/** The server itself, in this process, on files in memory; spoken to in nothing but messages of the protocol. */
export interface MemoryServer {
  readonly client: ProtocolConnection;
  readonly services: WithAnalysis;
  /** by file, what was last told of it */
  readonly diagnostics: ReadonlyMap<string, readonly Diagnostic[]>;
  /** what the server wrote to its log: nothing, unless something failed */
  readonly log: string[];
  uriOf(name: string): string;
  isOpen(name: string): boolean;
  open(name: string, text: string): Promise<void>;
  change(name: string, ...changes: readonly TextDocumentContentChangeEvent[]): Promise<void>;
  /** The file as it is, as somebody's other program left it. */
  write(name: string, text: string): void;
  /** Ends when everything sent so far has been taken in, and told as it is while somebody types. */
  takenIn(): Promise<void>;
  /** Ends when everything sent so far has been taken in and told; nobody types any more. */
  settled(): Promise<void>;
  stop(): void;
}

/** `initialize`: what the editor says of itself, beside the usual. */
export async function startMemoryServer(
  files: Readonly<Record<string, string>> = {},
  initialize: Partial<InitializeParams> = {},
): Promise<MemoryServer> {
  const disk = new VirtualFileSystemProvider();
  disk.insert(URI.parse(uriOf('.book')), '');
  for (const [name, text] of Object.entries(files)) disk.insert(URI.parse(uriOf(name)), text);

  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const services = startLayupServer(
    createConnection(ProposedFeatures.all, new StreamMessageReader(toServer), new StreamMessageWriter(toClient)),
    () => disk,
  );
  const client = createProtocolConnection(new StreamMessageReader(toClient), new StreamMessageWriter(toServer));

  const diagnostics = new Map<string, readonly Diagnostic[]>();
  const log: string[] = [];
  const versions = new Map<string, number>();
  client.onNotification(
    'textDocument/publishDiagnostics',
    (told: { readonly uri: string; readonly diagnostics: readonly Diagnostic[] }) => {
      diagnostics.set(told.uri.slice(folder.length + 1), told.diagnostics);
    },
  );
  client.onNotification('window/logMessage', ({ message }: { readonly message: string }) => {
    log.push(message);
  });
  client.onRequest('workspace/configuration', ({ items }: { readonly items: readonly unknown[] }) =>
    items.map(() => null),
  );
  client.onRequest('client/registerCapability', () => null);
  client.onRequest(rulePageRequest, ({ rule }: RulePageParams): RulePageResult => ({ text: pages[rule] }));
  client.listen();
  await client.sendRequest(InitializeRequest.type, {
    processId: null,
    rootUri: null,
    capabilities: {},
    workspaceFolders: [{ uri: folder, name: 'book' }],
    ...initialize,
  });
  await client.sendNotification(InitializedNotification.type, {});

  /** Messages are answered in their order: what was sent before has been seen once this is answered. */
  const ping = (): Promise<unknown> => client.sendRequest('laybook/stockText', { uri: 'layup-stock:/none' });
  const version = (name: string): number => {
    const next = (versions.get(name) ?? 0) + 1;
    versions.set(name, next);
    return next;
  };

  const server: MemoryServer = {
    client,
    services,
    diagnostics,
    log,
    uriOf,
    isOpen: (name) => versions.has(name),
    open: (name, text) =>
      client.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uriOf(name), languageId: 'layup', version: version(name), text },
      }),
    change: (name, ...contentChanges) =>
      client.sendNotification('textDocument/didChange', {
        textDocument: { uri: uriOf(name), version: version(name) },
        contentChanges,
      }),
    write: (name, text) => disk.insert(URI.parse(uriOf(name)), text),
    async settled() {
      await server.takenIn();
      await client.sendNotification(cursorNotification, {});
      await server.takenIn();
      // What was held back is told beside everything else: a machine that others load may not be through with it.
      for (let waits = 0; waits < 200 && services.steady.held.length > 0; waits++) await pause(10);
      await server.takenIn();
    },
    async takenIn() {
      await ping();
      await services.shared.workspace.WorkspaceManager.ready;
      await services.shared.workspace.WorkspaceLock.read(() => undefined);
      await ping();
    },
    stop() {
      client.dispose();
      toServer.end();
      toClient.end();
    },
  };
  await server.settled();
  return server;
}

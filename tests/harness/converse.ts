import { EventEmitter, once } from 'node:events';
import {
  type ClientCapabilities,
  type Diagnostic,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  type ProtocolConnection,
} from 'vscode-languageserver-protocol/node';
import { type RulePageParams, type RulePageResult, rulePageRequest } from '../../language/protocol/explain.ts';
import { pages } from '../../language/rules/generated/pages.ts';

export interface ConversationOptions {
  readonly folders?: { readonly uri: string; readonly name: string }[];
  readonly capabilities?: ClientCapabilities;
  readonly settings?: unknown;
  /** of who must live on for the server to stay; none for a server that has no processes about it */
  readonly processId?: number;
}

/** What is the same whatever a server runs in: it is spoken to as an editor does. */
export interface Conversation {
  readonly connection: ProtocolConnection;
  readonly initialized: InitializeResult;
  /** what the server wrote to its log */
  readonly log: string[];
  /** by address, what was last told of a document */
  readonly diagnostics: ReadonlyMap<string, readonly Diagnostic[]>;
  /** The diagnostics of the next report on a document. */
  nextDiagnostics(uri: string): Promise<readonly Diagnostic[]>;
}

/** Says hello; requests that the test wants to answer itself must be registered before. */
export async function converse(
  connection: ProtocolConnection,
  { folders = [], capabilities = {}, settings, processId }: ConversationOptions,
  log: string[] = [],
): Promise<Conversation> {
  const reports = new EventEmitter().setMaxListeners(0);
  const latest = new Map<string, readonly Diagnostic[]>();
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
    log.push(message);
  });
  connection.onNotification(
    'textDocument/publishDiagnostics',
    ({ uri, diagnostics }: { uri: string; diagnostics: Diagnostic[] }) => {
      latest.set(uri, diagnostics);
      reports.emit(uri, diagnostics);
    },
  );
  connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) =>
    items.map(() => settings ?? null),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest(rulePageRequest, ({ rule }: RulePageParams): RulePageResult => ({ text: pages[rule] }));
  connection.listen();
  const initialized = await connection.sendRequest(InitializeRequest.type, {
    processId: processId ?? null,
    rootUri: null,
    capabilities,
    workspaceFolders: folders,
  });
  await connection.sendNotification(InitializedNotification.type, {});
  return {
    connection,
    initialized,
    log,
    diagnostics: latest,
    async nextDiagnostics(uri) {
      const [diagnostics] = (await once(reports, uri)) as [Diagnostic[]];
      return diagnostics;
    },
  };
}

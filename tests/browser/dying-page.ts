/// <reference lib="dom" />
/** Runs in the page of `dying.check.ts`: what the extension does in a browser, around a server that a text brings down. */
import { createMessageConnection, type MessageConnection } from 'vscode-languageserver-protocol/browser';
import { LeftAlone } from '../../extension/left-alone.ts';
import { Pulse } from '../../extension/pulse.ts';
import { WorkerWire } from '../../extension/worker-wire.ts';
import { aliveRequest } from '../../language/protocol/alive.ts';

const uri = 'untitled:deadly.layup';

/** What happened, for the test to read. */
export const seen = { deaths: [] as string[], told: [] as string[], starts: 0 };

export function run(program: string, text: string, limitMs: number): void {
  const leftAlone = new LeftAlone();
  const document = { getText: () => text };
  let wire: WorkerWire;
  let connection: MessageConnection | undefined;
  const start = async (): Promise<void> => {
    seen.starts++;
    wire = new WorkerWire(new Worker(program), (why) => seen.deaths.push(why));
    const own = createMessageConnection(wire.reader, wire.writer);
    own.onClose(() => {
      connection = undefined;
      leftAlone.died();
      // as often as an editor starts a server by itself
      if (seen.starts < 5) void start();
    });
    own.onRequest(() => null);
    own.onNotification('textDocument/publishDiagnostics', ({ diagnostics }) => {
      seen.told = diagnostics.map(({ message }: { readonly message: string }) => message);
    });
    own.listen();
    await own.sendRequest('initialize', {
      processId: null,
      rootUri: null,
      capabilities: {},
      initializationOptions: { leftAlone: leftAlone.keys },
    });
    await own.sendNotification('initialized', {});
    connection = own;
    leftAlone.opened(document);
    await own.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'layup', version: 1, text },
    });
  };
  new Pulse(
    async () => connection?.sendRequest(aliveRequest),
    () => wire.die('it does not answer any more'),
    { limitMs, everyMs: limitMs / 4 },
  );
  // What a dead server was asked is never answered.
  start().catch(() => undefined);
}

/** A worker of which the editor gets a message that it cannot read. */
export function unreadable(program: string): void {
  const worker = new Worker(program);
  new WorkerWire(worker, (why) => seen.deaths.push(why));
  worker.dispatchEvent(new MessageEvent('messageerror'));
}

/// <reference lib="dom" />
/** Entry of the extension in a browser: the language server runs in a web worker. */
import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { aliveRequest } from '../language/protocol/alive.ts';
import { Pulse } from './pulse.ts';
import { startExtension } from './start.ts';
import type { Views } from './views.ts';
import { WorkerWire } from './worker-wire.ts';

let client: LanguageClient | undefined;
let wire: WorkerWire | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<Views> {
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server-browser.js').toString(true);
  // The ends of the wire, not the worker itself: where an editor wraps workers, the client does not know one when it sees it.
  const launch = (): Promise<WorkerWire> => {
    // A worker does not end by itself: after a restart there would be two.
    wire?.end();
    wire = new WorkerWire(new Worker(program), (why) => client?.error(`The language server has died: ${why}`));
    return Promise.resolve(wire);
  };
  const started = await startExtension(context, (options) => {
    client = new LanguageClient('laybook', 'Laybook', launch, options);
    return client;
  });
  const pulse = new Pulse(
    async () => (started.client.isRunning() ? started.client.sendRequest(aliveRequest) : undefined),
    () => wire?.die('it does not answer any more'),
  );
  context.subscriptions.push({ dispose: () => pulse.stop() });
  return started.views;
}

export async function deactivate(): Promise<void> {
  await client?.stop();
  wire?.end();
}

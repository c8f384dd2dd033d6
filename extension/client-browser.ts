/// <reference lib="dom" />
/** Entry of the extension in a browser: the language server runs in a web worker. */
import * as vscode from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { startExtension } from './start.ts';
import type { Views } from './views.ts';

let client: LanguageClient | undefined;
let worker: Worker | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<Views> {
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server-browser.js').toString(true);
  // The ends of the wire, not the worker itself: where an editor wraps workers, the client does not know one when it sees it.
  const launch = (): Promise<MessageTransports> => {
    // A worker does not end by itself: after a restart there would be two.
    worker?.terminate();
    worker = new Worker(program);
    return Promise.resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
  };
  const started = await startExtension(context, (options) => new LanguageClient('laybook', 'Laybook', launch, options));
  client = started.client;
  return started.views;
}

export async function deactivate(): Promise<void> {
  await client?.stop();
  worker?.terminate();
}

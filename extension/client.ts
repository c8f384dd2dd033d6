/** Entry of the extension where there is Node: the language server runs in a process of its own, on the Node that the editor brings. */
import type * as vscode from 'vscode';
import { LanguageClient, type ServerOptions, TransportKind } from 'vscode-languageclient/node';
import { startExtension } from './start.ts';
import { provideTasks } from './tasks.ts';
import type { Views } from './views.ts';

let client: LanguageClient | undefined;

function serverOptions(module: string): ServerOptions {
  const transport = TransportKind.ipc;
  return {
    run: { module, transport },
    debug: {
      module,
      transport,
      options: { execArgv: ['--nolazy', '--inspect=6009'] },
    },
  };
}

export async function activate(context: vscode.ExtensionContext): Promise<Views> {
  const server = serverOptions(context.asAbsolutePath('dist/server.cjs'));
  const started = await startExtension(context, (options) => new LanguageClient('laybook', 'Laybook', server, options));
  client = started.client;
  context.subscriptions.push(provideTasks(context.asAbsolutePath('dist/laybook.cjs')));
  return started.views;
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

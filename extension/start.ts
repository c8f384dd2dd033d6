/** Starts the extension: the same with a server in a process of its own and with one in a worker of a browser. */
import * as vscode from 'vscode';
import { type BaseLanguageClient, type LanguageClientOptions, State } from 'vscode-languageclient';
import { nextFinding } from './commands/next-finding.ts';
import { registerReference } from './commands/open-reference.ts';
import { restartServer } from './commands/restart-server.ts';
import { showReport } from './commands/show-report.ts';
import { registerFirstEvening } from './first-evening.ts';
import { LeftAlone } from './left-alone.ts';
import { clientOptions } from './options.ts';
import { readForServer } from './read-for-server.ts';
import { ReportDocuments } from './report-documents.ts';
import { readTranslation } from './translation.ts';
import { registerViews, type Views } from './views.ts';

/** `connect` makes the client of a server that is not started yet. */
export async function startExtension<Client extends BaseLanguageClient>(
  context: vscode.ExtensionContext,
  connect: (options: LanguageClientOptions) => Client,
): Promise<{ readonly views: Views; readonly client: Client }> {
  const started = performance.now();
  const log = vscode.window.createOutputChannel('Laybook', { log: true });
  const leftAlone = new LeftAlone();
  let stopping = false;
  const client = connect(clientOptions(log, await readTranslation(context.extensionUri), leftAlone));
  const { views, registered } = registerViews(context.extensionUri, client);
  const reports = new ReportDocuments(client, views.changes);
  context.subscriptions.push(
    log,
    readForServer(client, context.extensionUri),
    registered,
    reports,
    client.onDidChangeState(({ oldState, newState }) => {
      if (oldState === State.Running && newState === State.Stopped && !stopping) leftAlone.died();
    }),
    vscode.commands.registerCommand('laybook.restartServer', async () => {
      stopping = true;
      leftAlone.forget();
      await restartServer(client, log).finally(() => {
        stopping = false;
      });
    }),
    vscode.commands.registerCommand('laybook.showLog', () => log.show()),
    vscode.commands.registerCommand('laybook.showReport', (given?: unknown) => showReport(reports, given)),
    vscode.commands.registerCommand('laybook.nextFinding', nextFinding),
    registerReference(client),
    registerFirstEvening(context, client, started),
  );
  // Not awaited: the editor goes on while the server starts. The client itself tells the user when that fails.
  client.start().catch((error: unknown) => log.error(`The language server did not start: ${String(error)}`));
  log.info(`Extension activated in ${(performance.now() - started).toFixed(0)} ms`);
  return { views, client };
}

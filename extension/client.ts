/** Entry of the extension: starts the language server and offers the commands. */
import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/node';
import { nextFinding } from './commands/next-finding.ts';
import { restartServer } from './commands/restart-server.ts';
import { showReport } from './commands/show-report.ts';
import { registerFirstEvening } from './first-evening.ts';
import { clientOptions, serverOptions } from './options.ts';
import { ReportDocuments } from './report-documents.ts';
import { registerViews, type Views } from './views.ts';

let client: LanguageClient | undefined;

export function activate(context: vscode.ExtensionContext): Views {
  const started = performance.now();
  const log = vscode.window.createOutputChannel('Laybook', { log: true });
  const running = new LanguageClient(
    'laybook',
    'Laybook',
    serverOptions(context.asAbsolutePath('dist/server.cjs')),
    clientOptions(log),
  );
  client = running;
  const reports = new ReportDocuments(running);
  const { views, registered } = registerViews(context.extensionUri, running);
  context.subscriptions.push(
    log,
    registered,
    reports,
    vscode.commands.registerCommand('laybook.restartServer', () => restartServer(running, log)),
    vscode.commands.registerCommand('laybook.showLog', () => log.show()),
    vscode.commands.registerCommand('laybook.showReport', (given?: unknown) => showReport(reports, given)),
    vscode.commands.registerCommand('laybook.nextFinding', nextFinding),
    registerFirstEvening(context, running, started),
  );
  // Not awaited: the editor goes on while the server starts. The client itself tells the user when that fails.
  running.start().catch((error: unknown) => log.error(`The language server did not start: ${String(error)}`));
  log.info(`Extension activated in ${(performance.now() - started).toFixed(0)} ms`);
  return views;
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

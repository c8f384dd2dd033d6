/** What helps whoever starts, or is stuck: the sample, a new workshop, a new recipe, the status, a report of a fault. */
import * as vscode from 'vscode';
import { copyDiagnosticReport } from './commands/diagnostic-report.ts';
import { newRecipe } from './commands/new-recipe.ts';
import { newWorkshop } from './commands/new-workshop.ts';
import { openSample } from './commands/open-sample.ts';
import { watchEditorSwitches } from './editor-switches.ts';
import { type Server, showStatus } from './status-item.ts';

/** `started` is the time of `performance.now()` at which the extension began to start, ms. */
export function registerFirstEvening(
  { extension, extensionUri, globalState }: vscode.ExtensionContext,
  server: Server,
  started: number,
): vscode.Disposable {
  const registered = vscode.Disposable.from(
    vscode.commands.registerCommand('laybook.openSample', (given?: unknown) => openSample(extensionUri, given)),
    vscode.commands.registerCommand('laybook.newWorkshop', newWorkshop),
    vscode.commands.registerCommand('laybook.newRecipe', newRecipe),
    vscode.commands.registerCommand('laybook.copyDiagnosticReport', () => copyDiagnosticReport(facts)),
    showStatus(server),
    watchEditorSwitches(globalState),
  );
  const version = String(extension.packageJSON.version);
  const facts = { version, server, activation: (performance.now() - started) / 1000 };
  return registered;
}

import type * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';

/** Stops the language server and starts a new one; the open documents are sent to it again. */
export async function restartServer(client: LanguageClient, log: vscode.LogOutputChannel): Promise<void> {
  log.info('Restarting the language server');
  await client.restart();
}

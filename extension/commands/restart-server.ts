import type * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Stops the language server and starts a new one; the open documents are sent to it again. */
export async function restartServer(client: BaseLanguageClient, log: vscode.LogOutputChannel): Promise<void> {
  log.info('Restarting the language server');
  try {
    await client.stop();
  } catch (error) {
    // One that hangs, or never came up, cannot be asked to stop.
    log.warn(`The language server was not stopped in an orderly way: ${String(error)}`);
  }
  await client.start();
}

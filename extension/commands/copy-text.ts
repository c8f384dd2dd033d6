import * as vscode from 'vscode';

/** More than any table of figures has. */
const most = 100_000;

/** Puts a text on the clipboard: figures of a hover, by a link in it. */
export async function copyText(given?: unknown): Promise<void> {
  if (typeof given !== 'string' || given === '' || given.length > most) return;
  await vscode.env.clipboard.writeText(given);
  vscode.window.setStatusBarMessage(vscode.l10n.t('Copied.'), 3000);
}

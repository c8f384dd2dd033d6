import * as vscode from 'vscode';

/** Menus of the Explorer and icons of an editor hand over their file: it is opened first, so that its first recipe is the one at hand. */
export async function openGiven(given: unknown): Promise<void> {
  if (!(given instanceof vscode.Uri)) return;
  const here = vscode.window.activeTextEditor?.document.uri;
  if (here?.toString() !== given.toString()) await vscode.window.showTextDocument(given);
}

import * as vscode from 'vscode';
import type { WirePlace } from '../language/protocol/place.ts';

/** Opens a file at a place and puts the cursor there: in the editor that shows it, else in the first column. */
export async function openPlace({ uri, line, character }: Omit<WirePlace, 'name'>): Promise<void> {
  const address = vscode.Uri.parse(uri);
  const document = await vscode.workspace.openTextDocument(address);
  const shown = vscode.window.visibleTextEditors.find(
    (editor) => editor.document.uri.toString() === address.toString(),
  );
  const at = new vscode.Position(line, character);
  await vscode.window.showTextDocument(document, {
    viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One,
    selection: new vscode.Range(at, at),
  });
}

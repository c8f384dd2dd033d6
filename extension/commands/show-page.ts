import * as vscode from 'vscode';

/** A page beside the text, laid out by the editor's own view of Markdown; as text, where that is switched off. */
export async function showPage(page: vscode.Uri): Promise<void> {
  const options = { viewColumn: vscode.ViewColumn.Beside, preview: true };
  try {
    await vscode.commands.executeCommand('vscode.openWith', page, 'vscode.markdown.preview.editor', options);
  } catch {
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(page), options);
  }
}

import * as vscode from 'vscode';
import type { NextFinding } from '../../language/protocol/report.ts';

/** Goes to the next finding behind the cursor, or behind the head of the recipe whose lens was used; behind the last one, to the first. */
export async function nextFinding(given?: unknown): Promise<void> {
  const from = readFrom(given);
  const active = vscode.window.activeTextEditor;
  const uri = from === undefined ? active?.document.uri : vscode.Uri.parse(from.uri);
  if (uri === undefined) return;
  const found = vscode.languages
    .getDiagnostics(uri)
    .filter(({ source }) => source === 'laybook')
    .map(({ range }) => range)
    .sort((a, b) => a.start.compareTo(b.start));
  const [first] = found;
  if (first === undefined) {
    await vscode.window.showInformationMessage(vscode.l10n.t('Nothing stands open in this file.'));
    return;
  }
  const editor = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
  const cursor = editor.selection.active;
  const at = from !== undefined && cursor.line < from.line ? new vscode.Position(from.line, 0) : cursor;
  const next = found.find(({ start }) => start.isAfter(at)) ?? first;
  editor.selection = new vscode.Selection(next.start, next.start);
  editor.revealRange(next, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

function readFrom(given: unknown): NextFinding | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  const { uri, line } = given as Readonly<Record<string, unknown>>;
  return typeof uri === 'string' && typeof line === 'number' ? { uri, line } : undefined;
}

import * as vscode from 'vscode';
import { rulePageUri } from '../server-documents.ts';

const ruleName = /^[a-z]+(-[a-z]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/;

/** Opens the page of a rule: the one given by a link or quick fix, else one that the user chooses. */
export async function explainRule(given?: unknown): Promise<void> {
  const rule = typeof given === 'string' ? given : await chooseRule();
  if (rule === undefined) return;
  if (!ruleName.test(rule)) {
    await vscode.window.showErrorMessage(`"${rule.slice(0, 80)}" is not the name of a rule, such as wrap/short`);
    return;
  }
  const page = await vscode.workspace.openTextDocument(rulePageUri(rule));
  await vscode.window.showTextDocument(page, {
    viewColumn: vscode.ViewColumn.Beside,
    preview: true,
  });
}

/** Offers the rules found in the active editor, those of the cursor's line first; without any, asks for a name. */
async function chooseRule(): Promise<string | undefined> {
  const editor = vscode.window.activeTextEditor;
  const found = editor ? rulesFound(editor) : [];
  if (found.length > 0) return vscode.window.showQuickPick(found, { title: 'Explain a rule' });
  const typed = await vscode.window.showInputBox({
    title: 'Explain a rule',
    placeHolder: 'wrap/short',
  });
  return typed?.trim();
}

function rulesFound(editor: vscode.TextEditor): string[] {
  const line = editor.selection.active.line;
  const distance = (range: vscode.Range): number => Math.abs(range.start.line - line);
  const names = vscode.languages
    .getDiagnostics(editor.document.uri)
    .sort((a, b) => distance(a.range) - distance(b.range))
    .map(({ code }) => String(typeof code === 'object' ? code.value : code))
    .filter((name) => ruleName.test(name));
  return [...new Set(names)];
}

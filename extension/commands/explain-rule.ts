import * as vscode from 'vscode';
import { type RuleCase, readRuleCase, rulePageUri } from '../rule-page-uri.ts';
import { showPage } from './show-page.ts';

const ruleName = /^[a-z]+(-[a-z]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/;

/**
 * Opens the page of a rule: the one given by a link or quick fix, else one that the user chooses. Where the rule has found
 * something in the recipe, the page tells of it on top.
 */
export async function explainRule(given?: unknown, givenCase?: unknown): Promise<void> {
  const rule = typeof given === 'string' ? given : await chooseRule();
  if (rule === undefined) return;
  if (!ruleName.test(rule)) {
    await vscode.window.showErrorMessage(
      vscode.l10n.t('"{0}" is not the name of a rule, such as wrap/short', rule.slice(0, 80)),
    );
    return;
  }
  await showPage(rulePageUri(rule, readRuleCase(givenCase) ?? caseHere(rule)));
}

/** The finding of a rule in the active editor that is nearest to the cursor. */
function caseHere(rule: string): RuleCase | undefined {
  const editor = vscode.window.activeTextEditor;
  const found = editor && findingsOf(editor).find(({ name }) => name === rule);
  if (editor === undefined || found === undefined) return undefined;
  const { line, character } = found.range.start;
  return { uri: editor.document.uri.toString(), position: { line, character } };
}

/** Offers the rules found in the active editor, those of the cursor's line first; without any, asks for a name. */
async function chooseRule(): Promise<string | undefined> {
  const editor = vscode.window.activeTextEditor;
  const found = editor ? [...new Set(findingsOf(editor).map(({ name }) => name))] : [];
  const title = vscode.l10n.t('Explain a rule');
  if (found.length > 0) return vscode.window.showQuickPick(found, { title });
  const typed = await vscode.window.showInputBox({ title, placeHolder: 'wrap/short' });
  return typed?.trim();
}

/** What the rules have found, nearest to the cursor first. */
function findingsOf(editor: vscode.TextEditor): { readonly name: string; readonly range: vscode.Range }[] {
  const { line } = editor.selection.active;
  const distance = (range: vscode.Range): number => Math.abs(range.start.line - line);
  return vscode.languages
    .getDiagnostics(editor.document.uri)
    .map(({ code, range }) => ({ name: String(typeof code === 'object' ? code.value : code), range }))
    .filter(({ name }) => ruleName.test(name))
    .sort((a, b) => distance(a.range) - distance(b.range));
}

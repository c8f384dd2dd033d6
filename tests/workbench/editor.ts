/** Steps that the workbench tests share, in the words of the `vscode` API. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import type { Views } from '../../extension/views.ts';

const limitMs = 30_000;
const pauseMs = 50;

/** Asks again until the answer is there; fails with what was waited for. */
export async function until<T>(what: string, ask: () => T | undefined | Promise<T | undefined>): Promise<T> {
  const end = Date.now() + limitMs;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    if (Date.now() > end) throw new Error(`waited ${limitMs / 1000} s in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, pauseMs));
  }
}

function workshop(): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  assert.ok(folder, 'the sample workshop is open');
  return folder.uri;
}

/** Opens a file of the sample workshop in the editor. */
export async function open(name: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(workshop(), name));
  await vscode.window.showTextDocument(document);
  return document;
}

/** All recipe files of the workshop, opened without being shown. */
export async function allFiles(): Promise<vscode.TextDocument[]> {
  const uris = await vscode.workspace.findFiles('**/*.layup');
  return Promise.all(uris.map((uri) => vscode.workspace.openTextDocument(uri)));
}

/** Undoes what a test has changed, in every file. */
export async function revertAll(): Promise<void> {
  for (const document of vscode.workspace.textDocuments.filter((each) => each.isDirty && each.languageId === 'layup')) {
    await vscode.window.showTextDocument(document);
    await vscode.commands.executeCommand('workbench.action.files.revert');
  }
}

/** Range of the first match of a pattern; of its first group where there is one. */
export function find(document: vscode.TextDocument, pattern: RegExp): vscode.Range {
  const match = new RegExp(pattern, 'dm').exec(document.getText());
  const [start, end] = match?.indices?.[1] ?? match?.indices?.[0] ?? [];
  if (start === undefined || end === undefined) {
    throw new Error(`${vscode.workspace.asRelativePath(document.uri)} has no ${pattern}`);
  }
  return new vscode.Range(document.positionAt(start), document.positionAt(end));
}

/** The name of a finding's rule. */
export const ruleOf = ({ code }: vscode.Diagnostic): string =>
  String(typeof code === 'object' ? code.value : (code ?? ''));

/** Findings of one rule in a document, once there is one. */
export const findingsOf = (document: vscode.TextDocument, rule: string): Promise<vscode.Diagnostic[]> =>
  until(`a finding of ${rule}`, () => {
    const found = vscode.languages.getDiagnostics(document.uri).filter((each) => ruleOf(each) === rule);
    return found.length > 0 ? found : undefined;
  });

/** Text of all hovers at a position, once there are some. */
export const hoverAt = (document: vscode.TextDocument, position: vscode.Position): Promise<string> =>
  until('a hover', async () => {
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      position,
    );
    const text = hovers
      .flatMap(({ contents }) => contents)
      .map((content) => (typeof content === 'string' ? content : content.value))
      .join('\n');
    return text === '' ? undefined : text;
  });

/** Replaces a range of a document. */
export async function replace(document: vscode.TextDocument, range: vscode.Range, text: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, range, text);
  assert.ok(await vscode.workspace.applyEdit(edit));
}

/** The views of the extension itself, for what the editor's own interface does not tell. */
export async function views(): Promise<Views> {
  const extension = vscode.extensions.getExtension<Views>('laybook.laybook');
  assert.ok(extension, 'the extension is installed');
  return extension.activate();
}

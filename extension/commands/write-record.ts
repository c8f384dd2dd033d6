import * as vscode from 'vscode';
import { type NewRecordResult, newRecordRequest } from '../../language/protocol/paper.ts';
import { recipeGiven, recipeHere } from '../recipe-asked.ts';
import { ask, type Server } from '../server.ts';

/** Writes the record of a build with blanks, in a file of its own, and puts the cursor into the first of them. */
export async function writeRecord(server: Server, given?: unknown): Promise<vscode.Uri | undefined> {
  const about = recipeGiven(given) ?? recipeHere();
  if (about === undefined) {
    await vscode.window.showInformationMessage(
      vscode.l10n.t('Put the cursor into a recipe first: its record is written.'),
    );
    return undefined;
  }
  const date = today();
  const { file, text, nothing } = await ask<NewRecordResult>(server, newRecordRequest, { ...about, date });
  if (file === undefined || text === undefined) {
    if (nothing !== undefined) await vscode.window.showWarningMessage(nothing);
    return undefined;
  }
  const uri = vscode.Uri.joinPath(vscode.Uri.parse(about.uri), '..', ...file.split('/'));
  if (await exists(uri)) {
    await vscode.window.showTextDocument(uri);
    return uri;
  }
  await vscode.workspace.fs.writeFile(uri, new Uint8Array());
  const editor = await vscode.window.showTextDocument(uri);
  await editor.insertSnippet(new vscode.SnippetString(withStops(text)), new vscode.Position(0, 0));
  return uri;
}

/** The day where the shop is, ISO 8601. */
function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Each blank `?` becomes a stop of the tabulator key, so that the hands stay on the keys. */
export function withStops(text: string): string {
  let stop = 0;
  return text.replace(/[\\$}]/g, '\\$&').replace(/\?/g, () => `\${${++stop}:?}`);
}

const exists = (uri: vscode.Uri): Promise<boolean> =>
  Promise.resolve(vscode.workspace.fs.stat(uri)).then(
    () => true,
    () => false,
  );

import * as vscode from 'vscode';
import { askRecipe } from '../new/ask-recipe.ts';
import { folderGiven, writeNew } from '../new/places.ts';
import { readRecipeAnswers } from '../new/read-answers.ts';
import { newRecipe as textOf } from '../new/recipe.ts';
import { words } from '../new/words.ts';
import { localised } from '../page/page.ts';

/** Writes a new recipe and shows it: into the open folder, or as an unsaved file where none is open. */
export async function newRecipe(given?: unknown): Promise<vscode.Uri | undefined> {
  const answers = readRecipeAnswers(given) ?? (await askRecipe());
  if (answers === undefined) return undefined;
  const text = textOf(answers, localised(words));
  const folder = folderGiven(given) ?? (await folderForRecipe());
  if (folder === undefined) {
    const unsaved = await vscode.workspace.openTextDocument({ language: 'layup', content: text });
    await vscode.window.showTextDocument(unsaved);
    return unsaved.uri;
  }
  const file = `${answers.name}.layup`;
  if (!(await writeNew(folder, { [file]: text }))) return undefined;
  const uri = vscode.Uri.joinPath(folder, file);
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
  return uri;
}

/** The folder of the recipe that is being looked at, else the workspace's; asked for where there are several. */
async function folderForRecipe(): Promise<vscode.Uri | undefined> {
  const active = vscode.window.activeTextEditor?.document;
  if (active?.languageId === 'layup' && vscode.workspace.getWorkspaceFolder(active.uri) !== undefined) {
    return vscode.Uri.joinPath(active.uri, '..');
  }
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.length < 2) return folders[0]?.uri;
  return (await vscode.window.showWorkspaceFolderPick())?.uri;
}

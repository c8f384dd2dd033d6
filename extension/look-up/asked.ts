import * as vscode from 'vscode';
import { type MaterialAsked, type MaterialsResult, materialsRequest } from '../../language/protocol/look-up.ts';
import { ask, type Server } from '../server.ts';

/** The position of the cursor in a recipe or a list of materials. */
export function atCursor(): MaterialAsked['at'] {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== 'layup') return undefined;
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri.toString(), position: { line, character } };
}

/** The material that is given, or whose name is under the cursor, or that the user chooses; undefined where none is. */
export async function askedMaterial(server: Server, given: unknown, title: string): Promise<string | undefined> {
  if (typeof given === 'string' && given.length < 200) return given;
  const at = atCursor();
  const asked: MaterialAsked = at === undefined ? {} : { at };
  const { here, materials } = await ask<MaterialsResult>(server, materialsRequest, asked);
  if (here !== undefined) return here;
  if (materials.length === 0) {
    await vscode.window.showInformationMessage(vscode.l10n.t('No recipe of this workspace names a material yet.'));
    return undefined;
  }
  const items = materials.map(({ name, kind, title: long, recipes }) => ({
    label: name,
    description: kind,
    detail: [long, recipesWords(recipes)].filter(Boolean).join(', '),
  }));
  const options = { title, placeHolder: vscode.l10n.t('Which material?'), matchOnDetail: true };
  return (await vscode.window.showQuickPick(items, options))?.label;
}

function recipesWords(count: number): string {
  if (count === 0) return vscode.l10n.t('in no recipe');
  return count === 1 ? vscode.l10n.t('in 1 recipe') : vscode.l10n.t('in {0} recipes', count);
}

import * as vscode from 'vscode';
import { chooseFolder, folderGiven, openFolder, writeNew } from '../new/places.ts';
import { words } from '../new/words.ts';
import { currencies, newWorkshop as filesOf, type WorkshopAnswers } from '../new/workshop.ts';
import { localised } from '../page/page.ts';

const { t } = vscode.l10n;
const height = /^\s*\d{1,4}\s*m?\s*$/;

/** Writes shop, materials and tools of a new workshop into the open folder or one that is chosen, and shows the shop. */
export async function newWorkshop(given?: unknown): Promise<vscode.Uri | undefined> {
  const answers = await askWorkshop();
  if (answers === undefined) return undefined;
  const open = vscode.workspace.workspaceFolders?.[0]?.uri;
  const folder = folderGiven(given) ?? open ?? (await chooseFolder(t('Folder of the new workshop'), t('Put It Here')));
  if (folder === undefined || !(await writeNew(folder, filesOf(answers, localised(words))))) return undefined;
  if (vscode.workspace.getWorkspaceFolder(folder) === undefined) {
    await openFolder(folder);
    return folder;
  }
  const shop = vscode.Uri.joinPath(folder, 'shop.layup');
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(shop));
  return folder;
}

async function askWorkshop(): Promise<WorkshopAnswers | undefined> {
  const name = await vscode.window.showInputBox({
    title: t('New workshop ({0} of {1})', 1, 3),
    prompt: t('Its name, as it stands on build sheets'),
    ignoreFocusOut: true,
    validateInput: (typed) => (typed.trim() === '' ? t('Any name') : undefined),
  });
  if (name === undefined) return undefined;
  const currency = await vscode.window.showQuickPick(currencies, {
    title: t('New workshop ({0} of {1})', 2, 3),
    placeHolder: t('Currency of its prices'),
    ignoreFocusOut: true,
  });
  if (currency === undefined) return undefined;
  const elevation = await vscode.window.showInputBox({
    title: t('New workshop ({0} of {1})', 3, 3),
    prompt: t('Height above the sea in metres: it sets the air pressure that presses on a bag'),
    value: '0',
    ignoreFocusOut: true,
    validateInput: (typed) => (height.test(typed) ? undefined : t('Whole metres, such as 340')),
  });
  return elevation === undefined ? undefined : { name, currency, elevation: Number.parseInt(elevation, 10) };
}

import * as vscode from 'vscode';
import { chooseFolder, exists, folderGiven, openFolder } from '../new/places.ts';

const { t } = vscode.l10n;

/** Copies the sample workshop into a folder that is chosen, under a name that is free there, and opens the copy. */
export async function openSample(extension: vscode.Uri, given?: unknown): Promise<vscode.Uri | undefined> {
  const named = folderGiven(given);
  const parent = named ?? (await chooseFolder(t('Where shall the sample workshop be copied to?'), t('Copy It Here')));
  if (parent === undefined) return undefined;
  const target = await freeName(parent);
  await vscode.workspace.fs.copy(vscode.Uri.joinPath(extension, 'extension', 'sample'), target, { overwrite: false });
  // Who names the folder goes on from there.
  if (named === undefined) await openFolder(target);
  return target;
}

async function freeName(parent: vscode.Uri): Promise<vscode.Uri> {
  for (let count = 1; ; count++) {
    const target = vscode.Uri.joinPath(parent, count === 1 ? 'hollow-tarn-workshop' : `hollow-tarn-workshop-${count}`);
    if (!(await exists(target))) return target;
  }
}

import * as vscode from 'vscode';
import { chooseFolder, exists, folderGiven, hasNoDisk, openFolder } from '../new/places.ts';

const { t } = vscode.l10n;

/**
 * Copies the sample workshop into a folder that is chosen, under a name that is free there, and opens the copy. Where there is no
 * disk, it goes into the folder that is open.
 */
export async function openSample(extension: vscode.Uri, given?: unknown): Promise<vscode.Uri | undefined> {
  const named = folderGiven(given);
  if (named === undefined && hasNoDisk()) return copyIntoWorkspace(extension);
  const parent = named ?? (await chooseFolder(t('Where shall the sample workshop be copied to?'), t('Copy It Here')));
  if (parent === undefined) return undefined;
  const target = await copyInto(extension, parent);
  // Who names the folder goes on from there.
  if (named === undefined) await openFolder(target);
  return target;
}

async function copyIntoWorkspace(extension: vscode.Uri): Promise<vscode.Uri | undefined> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  if (folder === undefined || vscode.workspace.fs.isWritableFileSystem(folder.scheme) !== true) {
    const words =
      folder === undefined
        ? t('A browser has no disk for the sample workshop. Open a folder or a repository first: it is copied into it.')
        : t('The open folder cannot be written to, and a browser has no disk for the sample workshop.');
    await vscode.window.showWarningMessage(words);
    return undefined;
  }
  const target = await copyInto(extension, folder);
  const deck = vscode.Uri.joinPath(target, 'sled_deck.layup');
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(deck));
  return target;
}

/** File by file: the extension may lie where folders cannot be listed, as behind a web address. */
async function copyInto(extension: vscode.Uri, parent: vscode.Uri): Promise<vscode.Uri> {
  const { fs } = vscode.workspace;
  const list = await fs.readFile(vscode.Uri.joinPath(extension, 'dist', 'sample-files.json'));
  const names: readonly string[] = JSON.parse(new TextDecoder().decode(list));
  const target = await freeName(parent);
  for (const name of names) {
    const parts = name.split('/');
    const file = await fs.readFile(vscode.Uri.joinPath(extension, 'extension', 'sample', ...parts));
    await fs.createDirectory(vscode.Uri.joinPath(target, ...parts.slice(0, -1)));
    await fs.writeFile(vscode.Uri.joinPath(target, ...parts), file);
  }
  return target;
}

async function freeName(parent: vscode.Uri): Promise<vscode.Uri> {
  for (let count = 1; ; count++) {
    const target = vscode.Uri.joinPath(parent, count === 1 ? 'hollow-tarn-workshop' : `hollow-tarn-workshop-${count}`);
    if (!(await exists(target))) return target;
  }
}

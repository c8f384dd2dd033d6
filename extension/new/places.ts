/** Where new files go, and that none is written over. */
import * as vscode from 'vscode';

export async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}

/** The folder named by the argument of a command, as the text of an address. */
export function folderGiven(given: unknown): vscode.Uri | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  const { folder } = given as Readonly<Record<string, unknown>>;
  return typeof folder === 'string' ? vscode.Uri.parse(folder, true) : undefined;
}

/** An editor in a browser, and none of it on a machine: there is nothing to choose a folder on. */
export const hasNoDisk = (): boolean => vscode.env.uiKind === vscode.UIKind.Web && vscode.env.remoteName === undefined;

/** A folder that the user chooses on the disk; where there is none, says so. */
export async function chooseFolder(title: string, openLabel: string): Promise<vscode.Uri | undefined> {
  if (hasNoDisk()) {
    await vscode.window.showWarningMessage(
      vscode.l10n.t('A browser has no disk to choose a folder on: open a folder or a repository first.'),
    );
    return undefined;
  }
  const chosen = await vscode.window.showOpenDialog({
    title,
    openLabel,
    canSelectFolders: true,
    canSelectFiles: false,
    canSelectMany: false,
  });
  return chosen?.[0];
}

/** Opens a folder: in this window where none is open yet, else in another one. */
export async function openFolder(folder: vscode.Uri): Promise<void> {
  const forceNewWindow = vscode.workspace.workspaceFolders !== undefined;
  await vscode.commands.executeCommand('vscode.openFolder', folder, { forceNewWindow });
}

/** Writes files into a folder unless one of them is there already; then says which, and writes none. */
export async function writeNew(folder: vscode.Uri, files: Readonly<Record<string, string>>): Promise<boolean> {
  const named = Object.entries(files).map(([name, text]) => ({ name, text, uri: vscode.Uri.joinPath(folder, name) }));
  const there = await Promise.all(named.map(async ({ name, uri }) => ((await exists(uri)) ? [name] : [])));
  if (there.flat().length > 0) {
    await vscode.window.showErrorMessage(
      vscode.l10n.t('{0} is there already; nothing was written over.', there.flat().join(', ')),
    );
    return false;
  }
  const encoder = new TextEncoder();
  for (const { uri, text } of named) await vscode.workspace.fs.writeFile(uri, encoder.encode(text));
  return true;
}

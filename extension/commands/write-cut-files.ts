import * as vscode from 'vscode';
import { type CutFilesParams, type CutFilesResult, cutFilesRequest } from '../../language/protocol/cut-files.ts';
import { chooseFolder, folderGiven } from '../new/places.ts';
import { openGiven } from '../open-given.ts';
import { bytesOf } from '../plan/files.ts';
import { recipeHere } from '../recipe-asked.ts';
import { ask, type Server } from '../server.ts';
import { askCut, readCut } from './ask-cut.ts';

const { t } = vscode.l10n;

/**
 * Writes the pieces of the recipe at the cursor as files to cut from, into a folder that is chosen; the files that were written. What
 * lies there with other words is written over only when the user says so.
 */
export async function writeCutFiles(server: Server, given?: unknown): Promise<readonly vscode.Uri[]> {
  await openGiven(given);
  const recipe = recipeHere();
  if (recipe === undefined) {
    await vscode.window.showInformationMessage(t('Open a file with a recipe first, then write its cut files.'));
    return [];
  }
  const asked = readCut(given) ?? (await askCut());
  if (asked === undefined) return [];
  const folder = folderGiven(given) ?? (await chooseFolder(t('Folder for the cut files'), t('Write Here')));
  if (folder === undefined) return [];
  const params: CutFilesParams = { ...recipe, ...asked };
  const { files, missing, nothing } = await vscode.window.withProgress(
    { location: vscode.ProgressLocation.Notification, title: t('Drawing the pieces of {0}', recipe.recipe) },
    () => ask<CutFilesResult>(server, cutFilesRequest, params),
  );
  if (nothing !== undefined) {
    await vscode.window.showErrorMessage(nothing);
    return [];
  }
  const drawn = files.map((file) => ({ uri: vscode.Uri.joinPath(folder, file.name), bytes: bytesOf(file) }));
  if (!(await mayWrite(drawn))) return [];
  await vscode.workspace.fs.createDirectory(folder);
  for (const { uri, bytes } of drawn) await writeWhole(uri, bytes);
  tell(folder, drawn.length, missing);
  return drawn.map(({ uri }) => uri);
}

interface Drawn {
  readonly uri: vscode.Uri;
  readonly bytes: Uint8Array;
}

async function mayWrite(files: readonly Drawn[]): Promise<boolean> {
  const others = (await Promise.all(files.map(async (file) => ((await isOther(file)) ? [file.uri] : [])))).flat();
  const [first] = others;
  if (first === undefined) return true;
  const replace = t('Replace');
  const name = first.path.slice(first.path.lastIndexOf('/') + 1);
  const question =
    others.length === 1
      ? t('{0} is there already. Replace it?', name)
      : t('{0} and {1} others are there already. Replace them?', name, others.length - 1);
  return (await vscode.window.showWarningMessage(question, { modal: true }, replace)) === replace;
}

/** Whether something else lies where a file is to be written. */
async function isOther({ uri, bytes }: Drawn): Promise<boolean> {
  try {
    const there = await vscode.workspace.fs.readFile(uri);
    return there.length !== bytes.length || there.some((byte, i) => byte !== bytes[i]);
  } catch (error) {
    return !(error instanceof vscode.FileSystemError && error.code === 'FileNotFound');
  }
}

/** Under another name first, so that nobody ever reads half a file. */
async function writeWhole(uri: vscode.Uri, bytes: Uint8Array): Promise<void> {
  const draft = uri.with({ path: `${uri.path}.part` });
  await vscode.workspace.fs.writeFile(draft, bytes);
  await vscode.workspace.fs.rename(draft, uri, { overwrite: true });
}

function tell(folder: vscode.Uri, count: number, missing: readonly string[]): void {
  const open = t('Open Folder');
  const written =
    count === 1
      ? t('1 cut file was written. Check the 100 mm bar, or one length, before you cut.')
      : t('{0} cut files were written. Check the 100 mm bar, or one length, before you cut.', count);
  const buttons = folder.scheme === 'file' ? [open] : [];
  // Not awaited: the command is done, whether or not anybody looks.
  void vscode.window.showInformationMessage(written, ...buttons).then((chosen) => {
    if (chosen === open) void vscode.commands.executeCommand('revealFileInOS', folder);
  });
  if (missing.length > 0) void vscode.window.showWarningMessage(t('There is no piece for {0}', missing.join('; ')));
}

import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { open } from '../editor.ts';

describe('Write Cut Files', () => {
  let folder: vscode.Uri | undefined;

  after(async () => {
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    if (folder !== undefined) await vscode.workspace.fs.delete(folder, { recursive: true });
  });

  async function written(more: object): Promise<readonly { readonly name: string; readonly bytes: Uint8Array }[]> {
    const workshop = vscode.workspace.workspaceFolders?.[0]?.uri;
    assert.ok(workshop);
    folder = vscode.Uri.joinPath(workshop, 'cut');
    const given = { folder: folder.toString(), ...more };
    const uris = await vscode.commands.executeCommand<readonly vscode.Uri[]>('laybook.writeCutFiles', given);
    return Promise.all(
      uris.map(async (uri) => ({
        name: uri.path.slice(uri.path.lastIndexOf('/') + 1),
        bytes: await vscode.workspace.fs.readFile(uri),
      })),
    );
  }

  it('writes a file a piece of the recipe at the cursor', async () => {
    await open('sled_deck.layup');
    const files = await written({ format: 'dxf', quantity: 2 });
    const names = files.map(({ name }) => name);
    assert.ok(names.includes('sled_deck-x2-outer.dxf'), names.join(', '));
    assert.ok(names.includes('sled_deck-x2-body.dxf'), names.join(', '));
    for (const { bytes } of files) assert.match(new TextDecoder().decode(bytes), /AC1009[\s\S]*EOF\r\n$/);
    assert.deepEqual(
      (await vscode.workspace.fs.readDirectory(folder ?? vscode.Uri.parse('none:'))).map(([name]) => name).sort(),
      [...names].sort(),
    );
  });

  it('writes pages to print, with what makes them loaded from the package', async () => {
    await open('sled_deck.layup');
    const files = await written({ format: 'pdf', paper: 'letter' });
    assert.ok(files.length > 3);
    for (const { bytes } of files) assert.equal(new TextDecoder().decode(bytes.slice(0, 8)), '%PDF-1.7');
  });
});

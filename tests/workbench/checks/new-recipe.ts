import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { until } from '../editor.ts';

const answers = {
  name: 'evening_panel',
  process: 'infusion',
  outline: { kind: 'rounded', length: 0.72, width: 0.52 },
  fabric: 'biax_440',
  core: { material: 'foam_pvc_80', thickness: 0.01 },
};

describe('a new recipe', () => {
  let written: vscode.Uri | undefined;

  after(async () => {
    if (written === undefined) return;
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await vscode.workspace.fs.delete(written);
  });

  it('is written from answers, shown, and has nothing to mend', async () => {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    assert.ok(folder);
    const given = { ...answers, folder: folder.toString() };
    written = await vscode.commands.executeCommand<vscode.Uri>('laybook.newRecipe', given);
    const document = vscode.window.activeTextEditor?.document;
    assert.equal(document?.uri.toString(), written?.toString());
    assert.match(document?.getText() ?? '', /^recipe evening_panel "Evening panel" \{$/m);
    const uri = document?.uri ?? folder;
    // Lenses come when the file has been checked.
    await until('lenses above the recipe', async () => {
      const lenses = await vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', uri, 20);
      return lenses.some(({ command }) => /\d/.test(command?.title ?? '')) ? true : undefined;
    });
    const wrong = vscode.languages
      .getDiagnostics(uri)
      .filter(({ severity }) => severity <= vscode.DiagnosticSeverity.Warning);
    assert.deepEqual(
      wrong.map(({ message }) => message),
      [],
    );
  });
});

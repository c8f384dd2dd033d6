import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import * as vscode from 'vscode';
import { open, until } from '../editor.ts';

const namesIn = async (folder: vscode.Uri): Promise<readonly string[]> =>
  (await vscode.workspace.fs.readDirectory(folder)).map(([name]) => name).sort();

describe('a first evening', () => {
  it('copies the sample workshop, each time into a folder of its own', async () => {
    const workshop = vscode.workspace.workspaceFolders?.[0]?.uri;
    assert.ok(workshop);
    const parent = vscode.Uri.joinPath(workshop, '..', 'copies');
    const argument = { folder: parent.toString() };
    await vscode.workspace.fs.createDirectory(parent);
    const first = await vscode.commands.executeCommand<vscode.Uri>('laybook.openSample', argument);
    const second = await vscode.commands.executeCommand<vscode.Uri>('laybook.openSample', argument);
    assert.notEqual(first.toString(), second.toString());
    for (const copy of [first, second]) {
      const names = await namesIn(copy);
      assert.ok(names.includes('sled_deck.layup') && names.includes('records'), names.join(', '));
    }
  });

  it('reports its state without a word of the recipes', async () => {
    const document = await open('first_try.layup');
    await until('findings', () => (vscode.languages.getDiagnostics(document.uri).length > 0 ? true : undefined));
    // The command ends when its message is read: the clipboard is looked at meanwhile.
    await vscode.env.clipboard.writeText('');
    void vscode.commands.executeCommand('laybook.copyDiagnosticReport');
    const report = await until('the report on the clipboard', async () => {
      const text = await vscode.env.clipboard.readText();
      return text === '' ? undefined : text;
    });
    assert.match(report, /^- Server: running$/m);
    assert.match(report, /^- Server answered in: \d+ ms$/m);
    assert.match(report, /^- [a-z-]+\/[a-z-]+: \d+$/m);
    for (const word of ['first_board', 'kitchen', 'first_try', 'triax_680', 'Hollow']) {
      assert.ok(!report.includes(word), `the report names ${word}`);
    }
  });
});

import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, open, replace, revertAll, until } from '../editor.ts';

/** Formats the shown document as the user's command does. */
async function format(document: vscode.TextDocument): Promise<string> {
  const edits = await vscode.commands.executeCommand<vscode.TextEdit[] | undefined>(
    'vscode.executeFormatDocumentProvider',
    document.uri,
    { tabSize: 2, insertSpaces: true },
  );
  if (edits && edits.length > 0) {
    const edit = new vscode.WorkspaceEdit();
    edit.set(document.uri, edits);
    assert.ok(await vscode.workspace.applyEdit(edit));
  }
  return document.getText();
}

describe('format', () => {
  after(revertAll);

  it('puts indentation and spaces right and leaves the rest as it was', async () => {
    const document = await open('sled_deck.layup');
    const tidy = await format(document);
    assert.equal(tidy.split('\n').length, document.lineCount);
    const indent = find(document, /^( +)ply /);
    await replace(document, indent, '\t ');
    assert.notEqual(document.getText(), tidy);
    const again = await until('the text as it was', async () => {
      const text = await format(document);
      return text === tidy ? text : undefined;
    });
    assert.equal(again, tidy);
  });
});

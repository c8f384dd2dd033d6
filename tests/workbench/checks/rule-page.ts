import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import * as vscode from 'vscode';
import { open, until } from '../editor.ts';

describe('the page of a rule', () => {
  it('opens beside the recipe', async () => {
    await open('first_try.layup');
    await vscode.commands.executeCommand('laybook.explainRule', 'wrap/short');
    const page = await until('the page', () =>
      vscode.workspace.textDocuments.find(({ uri }) => uri.scheme === 'laybook-rule' && uri.path === '/wrap/short.md'),
    );
    assert.equal(page.languageId, 'markdown');
    assert.match(page.getText(), /mend/i);
  });

  it('the server can be restarted, and finds again', async () => {
    const document = await open('first_try.layup');
    await vscode.commands.executeCommand('laybook.restartServer');
    await until('findings', () => (vscode.languages.getDiagnostics(document.uri).length > 0 ? true : undefined));
  });
});

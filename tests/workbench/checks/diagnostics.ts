import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, findingsOf, open, replace, revertAll, until } from '../editor.ts';

describe('findings', () => {
  it('the extension is installed from its package and wakes for a recipe', async () => {
    const document = await open('sled_deck.layup');
    assert.equal(document.languageId, 'layup');
    const extension = vscode.extensions.getExtension('laybook.laybook');
    assert.ok(extension, 'laybook.laybook is installed');
    assert.match(extension.extensionPath, /laybook\.laybook-/);
    await until('activation', () => (extension.isActive ? true : undefined));
  });

  it('a wrap that is too short is found in the first try, with its figures', async () => {
    const document = await open('first_try.layup');
    const [finding] = await findingsOf(document, 'wrap/short');
    assert.ok(finding);
    assert.match(finding.message, /\d mm/);
    assert.match(document.getText(finding.range), /\S/);
  });

  it('a finding appears while typing and goes when the line is mended', async () => {
    const document = await open('sled_deck.layup');
    const errors = (): vscode.Diagnostic[] =>
      vscode.languages
        .getDiagnostics(document.uri)
        .filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error);
    assert.deepEqual(
      errors().map(({ message }) => message),
      [],
    );
    const material = find(document, /^ *ply \w+ (\w+)/);
    await replace(document, material, 'no_such_cloth');
    const error = await until('an error', () => errors()[0]);
    assert.equal(error.range.start.line, material.start.line);
    assert.match(error.message, /no_such_cloth/);
    await revertAll();
    await until('no error', () => (errors().length === 0 ? true : undefined));
  });
});

import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { allFiles, find, open, revertAll, until } from '../editor.ts';

/** The sled deck's plies' materials that another file of the workshop declares. */
async function sharedMaterial(): Promise<{ name: string; home: vscode.TextDocument }> {
  const deck = await open('sled_deck.layup');
  const used = [...deck.getText().matchAll(/^ *(?:ply|strip|core|infuse with) (?:\w+ )?(\w+)/gm)].map(
    ([, name]) => name,
  );
  for (const home of await allFiles()) {
    if (home.uri.toString() === deck.uri.toString()) continue;
    for (const [, name] of home.getText().matchAll(/^(?:fabric|core|resin) (\w+)/gm)) {
      if (name && used.includes(name)) return { name, home };
    }
  }
  throw new Error('the sled deck uses no material that another file declares');
}

describe('rename', () => {
  after(revertAll);

  it('renames a material where it is declared and in every recipe', async () => {
    const deck = await open('sled_deck.layup');
    const { name, home } = await sharedMaterial();
    const use = find(deck, new RegExp(`\\b${name}\\b`));
    const edit = await until('a rename', async () => {
      const answer = await vscode.commands.executeCommand<vscode.WorkspaceEdit>(
        'vscode.executeDocumentRenameProvider',
        deck.uri,
        use.start,
        'cloth_renamed',
      );
      return answer && answer.size > 0 ? answer : undefined;
    });
    assert.ok(edit.has(deck.uri) && edit.has(home.uri));
    assert.ok(await vscode.workspace.applyEdit(edit));
    for (const document of [deck, home]) {
      assert.match(document.getText(), /\bcloth_renamed\b/);
      assert.doesNotMatch(document.getText(), new RegExp(`^ *(?:ply \\w+|fabric|core|resin) ${name}\\b`, 'm'));
    }
  });
});

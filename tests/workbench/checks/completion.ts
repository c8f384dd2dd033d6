import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, open, replace, revertAll, until } from '../editor.ts';

/** Labels offered at the end of a line that a test has typed. */
const offered = (document: vscode.TextDocument, position: vscode.Position): Promise<string[]> =>
  until('proposals', async () => {
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      position,
    );
    const labels = list.items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    return labels.length > 0 ? labels : undefined;
  });

/** Types a line in front of the first ply of the sled deck; returns the place behind it. */
async function type(text: string): Promise<{ document: vscode.TextDocument; end: vscode.Position }> {
  const document = await open('sled_deck.layup');
  const start = find(document, /^ *ply /).start;
  await replace(document, new vscode.Range(start, start), `${text}\n`);
  return { document, end: new vscode.Position(start.line, text.length) };
}

describe('completion', () => {
  after(revertAll);

  it('offers the kinds of layer in a stack', async () => {
    // Words that are not also names of snippets, which the editor offers everywhere.
    const { document, end } = await type('    ');
    const labels = await offered(document, end);
    for (const word of ['ply', 'strip', 'patch']) {
      assert.ok(
        labels.some((label) => label.startsWith(word)),
        `${word} is offered: ${labels.join(', ')}`,
      );
    }
    await revertAll();
  });

  it('offers materials where a ply needs one', async () => {
    const material = (document: vscode.TextDocument): string => document.getText(find(document, /^ *ply \w+ (\w+)/));
    const name = material(await open('sled_deck.layup'));
    const { document, end } = await type('    ply extra ');
    const labels = await offered(document, end);
    assert.ok(labels.includes(name), `${name} is offered: ${labels.join(', ')}`);
  });
});

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import * as vscode from 'vscode';
import { allFiles, find, open, until } from '../editor.ts';

const definitionOf = (document: vscode.TextDocument, position: vscode.Position): Promise<vscode.Location> =>
  until('a definition', async () => {
    const found = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
      'vscode.executeDefinitionProvider',
      document.uri,
      position,
    );
    const [first] = found;
    if (!first) return undefined;
    return 'targetUri' in first
      ? new vscode.Location(first.targetUri, first.targetSelectionRange ?? first.targetRange)
      : first;
  });

/** What the sled deck's process takes from the stock library: no file of the workshop declares it. */
async function stockName(deck: vscode.TextDocument): Promise<string> {
  const workshop = (await allFiles()).map((file) => file.getText()).join('\n');
  const used = [...deck.getText().matchAll(/^ *(?:peel|mesh|bag|tape) (\w+)/gm)].map(([, name]) => name ?? '');
  const name = used.find((each) => !new RegExp(`^\\w+ ${each}\\b`, 'm').test(workshop));
  assert.ok(name, `one of ${used.join(', ')} is from stock`);
  return name;
}

describe('definition', () => {
  it('of a layer is its line', async () => {
    const deck = await open('sled_deck.layup');
    const use = find(deck, /wrap onto (\w+)/);
    const { uri, range } = await definitionOf(deck, use.start);
    assert.equal(uri.toString(), deck.uri.toString());
    assert.match(deck.lineAt(range.start.line).text, new RegExp(`^ *core ${deck.getText(use)}\\b`));
  });

  it('of a stock material opens in the stock library, read-only', async () => {
    const deck = await open('sled_deck.layup');
    const name = await stockName(deck);
    const { uri, range } = await definitionOf(deck, find(deck, new RegExp(`\\b${name}\\b`)).start);
    assert.equal(uri.scheme, 'layup-stock');
    const stock = await vscode.workspace.openTextDocument(uri);
    assert.match(stock.lineAt(range.start.line).text, new RegExp(`\\b${name}\\b`));
  });
});

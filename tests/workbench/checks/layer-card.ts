import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, open, replace, revertAll, until, views } from '../editor.ts';

const card = async () => (await views()).cards.state?.card;
const shows = (name: string) =>
  until(`the card of ${name}`, async () => {
    const shown = await card();
    return shown?.title === name ? shown : undefined;
  });

/** Puts the cursor at a match, as a click does. */
async function cursorAt(document: vscode.TextDocument, pattern: RegExp): Promise<void> {
  const editor = await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
  const { start } = find(document, pattern);
  editor.selection = new vscode.Selection(start, start);
}

describe('the layer card', () => {
  let deck: vscode.TextDocument;
  before(async () => {
    deck = await open('sled_deck.layup');
    await cursorAt(deck, /^ *ply (outer)/);
    await vscode.commands.executeCommand('laybook.showLayerCard');
  });
  after(async () => {
    await revertAll();
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  });

  it('opens beside the text, which keeps the focus', async () => {
    const shown = await shows('outer');
    assert.match(shown.summary, /\d\s*k?g wet/);
    assert.equal(shown.stack.layers.length, 6);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), deck.uri.toString());
    // the editor tells of its tabs a moment after the card has drawn itself
    await until('the card beside the text', async () =>
      vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .find(({ label, group }) => label === 'Layer card' && group.viewColumn !== vscode.ViewColumn.One),
    );
  });

  it('follows the cursor from layer to layer', async () => {
    await cursorAt(deck, /^ *core (body)/);
    await shows('body');
    await cursorAt(deck, /^ *ply (inner)/);
    await shows('inner');
  });

  it('stays with its layer while the cursor is elsewhere in the recipe, and its figures stay true', async () => {
    await cursorAt(deck, /^ *ply (outer)/);
    const thick = await shows('outer');
    await cursorAt(deck, /^ *(quantity)/);
    await replace(deck, find(deck, /^ *ply outer triax_680 .*wrap onto body by (landing)/), '60 mm');
    await until('another piece', async () => {
      const now = await card();
      return now?.title === 'outer' && now.piece?.words !== thick.piece?.words ? now : undefined;
    });
    await revertAll();
    await until('the piece of before', async () =>
      (await card())?.piece?.words === thick.piece?.words ? true : undefined,
    );
  });

  it('keeps the last card, and says so, while a line cannot be read', async () => {
    await cursorAt(deck, /^ *ply (inner)/);
    const before = await shows('inner');
    await replace(deck, find(deck, /^ *ply inner triax_680( at)/), ' ] at');
    const state = await until('a card of before', async () => {
      const { state: now } = (await views()).cards;
      return now?.old === undefined ? undefined : now;
    });
    assert.deepEqual(state.card?.figures, before.figures);
    await revertAll();
    await until('a card of now', async () => ((await views()).cards.state?.old === undefined ? true : undefined));
  });

  it('stays where it is while it is pinned', async () => {
    await cursorAt(deck, /^ *ply (inner)/);
    await shows('inner');
    await vscode.commands.executeCommand('laybook.pinLayerCard');
    await cursorAt(deck, /^ *core (body)/);
    await new Promise((resolve) => setTimeout(resolve, 500));
    assert.equal((await card())?.title, 'inner');
    await vscode.commands.executeCommand('laybook.pinLayerCard');
    await shows('body');
  });

  it('is copied as text', async () => {
    await vscode.commands.executeCommand('laybook.copyLayerCard');
    const text = await vscode.env.clipboard.readText();
    assert.match(text, /^body: core of foam_80/);
    assert.match(text, /wet mass +\d/);
  });
});

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, open, replace, revertAll, until, views } from '../editor.ts';

const plan = async () => (await views()).plans.now;
const chooses = (name: string) =>
  until(`${name} in the plan`, async () => {
    const now = await plan();
    return now?.chosen.some((key) => key.endsWith(` ${name}`)) ? now : undefined;
  });

/** Puts the cursor at a match, as a click does. */
async function cursorAt(document: vscode.TextDocument, pattern: RegExp): Promise<void> {
  const editor = await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
  const { start } = find(document, pattern);
  editor.selection = new vscode.Selection(start, start);
}

describe('the plan', () => {
  let deck: vscode.TextDocument;
  before(async () => {
    deck = await open('sled_deck.layup');
    await cursorAt(deck, /^ *ply (outer)/);
    await vscode.commands.executeCommand('laybook.showPlan');
  });
  after(async () => {
    await revertAll();
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  });

  it('opens beside the text, which keeps the focus', async () => {
    const now = await chooses('outer');
    assert.match(now.picture?.title ?? '', /^Plan of sled_deck/);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), deck.uri.toString());
    await until('the plan beside the text', async () =>
      vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .find(({ label, group }) => label === 'Plan' && group.viewColumn !== vscode.ViewColumn.One),
    );
  });

  it('follows the cursor over layers, steps and zones', async () => {
    for (const [pattern, name] of [
      [/^ *core (body)/, 'body'],
      [/^ *(peel)/, 'peel'],
      [/^ *zone (mount)/, 'mount'],
      [/^ *feed (f1)/, 'f1'],
    ] as const) {
      await cursorAt(deck, pattern);
      await chooses(name);
    }
  });

  it('is drawn anew while somebody types, and stays as it was while a line cannot be read', async () => {
    await cursorAt(deck, /^ *(peel)/);
    await replace(deck, find(deck, /^ *peel nylon_85, (80)/), '120');
    const size = async () => (await plan())?.picture?.groups.find(({ what }) => what.startsWith('peel'))?.size;
    // 590 + 120 mm to both sides
    const wide = await until('a wider peel ply', async () =>
      (await size())?.match(/^1,?420 mm/) ? size() : undefined,
    );
    await replace(deck, find(deck, /^ *peel (nylon_85)/), '] nylon_85');
    await until('a plan of before', async () => ((await plan())?.old === undefined ? undefined : true));
    assert.equal(await size(), wide);
    await revertAll();
    await until('a plan of now', async () =>
      (await plan())?.old === undefined && (await size()) !== wide ? true : undefined,
    );
  });

  it('shows the section, and a recipe that a link names', async () => {
    await vscode.commands.executeCommand('laybook.showSection');
    await until('the section', async () => ((await plan())?.picture?.view === 'section' ? true : undefined));
    const uri = deck.uri.toString();
    await vscode.commands.executeCommand('laybook.showPlan', { uri, recipe: 'sled_deck', size: 'short' });
    await until('the size', async () => ((await plan())?.picture?.recipe.size === 'short' ? true : undefined));
  });
});

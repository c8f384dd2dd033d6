import assert from 'node:assert/strict';
import { afterEach, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, findingsOf, hoverAt, open, revertAll, until } from '../editor.ts';

/** Chooses in the list that is open: goes down by so many items, then accepts. */
async function choose(down: number): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 800));
  for (let i = 0; i < down; i++) await vscode.commands.executeCommand('workbench.action.quickOpenSelectNext');
  await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
}

async function deckAtMaterial(): Promise<vscode.TextDocument> {
  const deck = await open('sled_deck.layup');
  const editor = await vscode.window.showTextDocument(deck);
  const { start } = find(deck, /^ *core body (foam_80)/);
  editor.selection = new vscode.Selection(start, start);
  await hoverAt(deck, start);
  return deck;
}

describe('comparing materials', () => {
  afterEach(revertAll);

  it('edits nothing until a second choice says so', async () => {
    const deck = await deckAtMaterial();
    const before = deck.getText();
    const done = vscode.commands.executeCommand('laybook.compareMaterials');
    await choose(1);
    // "Keep foam_80" stands first
    await choose(0);
    await done;
    assert.equal(deck.getText(), before);
  });

  it('types the other material into the recipe after a second choice, and nothing else', async () => {
    const deck = await deckAtMaterial();
    const before = deck.getText();
    const done = vscode.commands.executeCommand('laybook.compareMaterials');
    await choose(1);
    await choose(1);
    await done;
    const now = deck.getText();
    const [, other] = /^ *core body (\w+)/m.exec(now) ?? [];
    assert.ok(other && other !== 'foam_80');
    assert.equal(now.replaceAll(new RegExp(`\\b${other}\\b`, 'g'), 'foam_80'), before);
  });
});

describe('the uses of a material', () => {
  it('lead to the recipe that is chosen', async () => {
    await open('materials.layup');
    const done = vscode.commands.executeCommand('laybook.findUses', 'foam_80');
    await choose(0);
    await done;
    const opened = vscode.window.activeTextEditor;
    assert.match(opened?.document.lineAt(opened.selection.active.line).text ?? '', /^recipe /);
  });
});

describe('a finding', () => {
  it('links to the page of its rule, which tells of it on top with its figures', async () => {
    const document = await open('first_try.layup');
    const [finding] = await findingsOf(document, 'wrap/short');
    const target = typeof finding?.code === 'object' ? finding.code.target : undefined;
    assert.equal(target?.scheme, 'laybook-rule');
    const page = await vscode.workspace.openTextDocument(target as vscode.Uri);
    const text = await until('the case', () => (page.getText().includes('## Here') ? page.getText() : undefined));
    assert.match(text, new RegExp(`first.*_try\\.layup, line ${(finding?.range.start.line ?? 0) + 1}`));
    assert.match(text, /\| \d.* mm|mm \|/);
  });

  it('has figures that a link in the hover copies', async () => {
    const deck = await open('sled_deck.layup');
    const text = await hoverAt(deck, find(deck, /^ *ply (outer)/).start);
    const [, query] = /\(command:laybook\.copyText\?([^)]+)\)/.exec(text) ?? [];
    assert.ok(query, 'the hover has a link that copies');
    await vscode.commands.executeCommand('laybook.copyText', ...JSON.parse(decodeURIComponent(query)));
    assert.match(await vscode.env.clipboard.readText(), /^outer\t\n.*wet mass\t\d/s);
  });
});

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, open, replace, revertAll, until, views } from '../editor.ts';

const paper = async () => (await views()).papers;
const shows = (what: string, pattern: RegExp) =>
  until(what, async () => {
    const body = (await paper()).now?.body;
    return body !== undefined && pattern.test(body) ? body : undefined;
  });

/** Puts the cursor at a match, as a click does. */
async function cursorAt(document: vscode.TextDocument, pattern: RegExp): Promise<void> {
  const editor = await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
  const { start } = find(document, pattern);
  editor.selection = new vscode.Selection(start, start);
}

describe('paper beside the text', () => {
  let deck: vscode.TextDocument;
  const written: vscode.Uri[] = [];
  before(async () => {
    deck = await open('sled_deck.layup');
    await cursorAt(deck, /^ *ply (outer)/);
    await vscode.commands.executeCommand('laybook.showSheet');
  });
  after(async () => {
    await revertAll();
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    for (const uri of written) await vscode.workspace.fs.delete(uri, { recursive: true });
  });

  it('is the build sheet, and the text keeps the focus', async () => {
    const body = await shows('the sheet', /Rescue sled deck/);
    assert.match(body, /1,?180 mm by 420 mm/);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), deck.uri.toString());
    await until('the sheet beside the text', async () =>
      vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .find(({ label, group }) => label === 'Rescue sled deck' && group.viewColumn !== vscode.ViewColumn.One),
    );
  });

  it('follows the text', async () => {
    await replace(deck, find(deck, /^ *peel nylon_85, (80 mm)/), '83 mm');
    await shows('the peel ply of now', /83 mm past/);
    await revertAll();
    await shows('the peel ply of before', /80 mm past/);
  });

  it('is of the size that the cursor is in', async () => {
    await cursorAt(deck, /^ *size (short)/);
    await vscode.commands.executeCommand('laybook.showSheet');
    await shows('the short deck', /980 mm by 400 mm/);
    await cursorAt(deck, /^ *ply (outer)/);
    await vscode.commands.executeCommand('laybook.showSheet');
    await shows('the deck as written', /1,?180 mm by 420 mm/);
  });

  it('is a PDF to save and a page to print', async () => {
    const pdf = await (await paper()).file('pdf');
    assert.equal(pdf?.name, 'sled_deck-sheet.pdf');
    assert.equal(new TextDecoder('latin1').decode(pdf.bytes.slice(0, 8)), '%PDF-1.7');
    const html = await (await paper()).file('html');
    assert.match(new TextDecoder().decode(html?.bytes), /^<!DOCTYPE html>[\s\S]*@page \{ size: A4/);
  });

  it('is the records of the recipe, with charts', async () => {
    await cursorAt(deck, /^ *ply (outer)/);
    await vscode.commands.executeCommand('laybook.showRecords');
    const body = await shows('the records', /Records of sled_deck/);
    assert.ok((body.match(/<figure><svg/g)?.length ?? 0) > 3);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), deck.uri.toString());
  });

  it('is a new record: a file of its own, with the cursor in the first blank, and no fault found in it', async () => {
    await cursorAt(deck, /^ *ply (outer)/);
    const uri = await vscode.commands.executeCommand<vscode.Uri>('laybook.writeRecord');
    written.push(uri);
    assert.match(uri.path, /\/records\/sled_deck\/\d{4}-\d\d-\d\d-41\.layup$/);
    const editor = await until('the record', async () =>
      vscode.window.activeTextEditor?.document.uri.toString() === uri.toString()
        ? vscode.window.activeTextEditor
        : undefined,
    );
    assert.match(editor.document.getText(), /^ {2}revision 4\n {2}by "\?"\n {2}lot triax_680 "\?"/m);
    assert.equal(editor.document.getText(editor.selection), '?');
    await vscode.commands.executeCommand('type', { text: 'RT' });
    await vscode.commands.executeCommand('jumpToNextSnippetPlaceholder');
    await vscode.commands.executeCommand('type', { text: 'G-0377' });
    assert.match(editor.document.getText(), /^ {2}by "RT"\n {2}lot triax_680 "G-0377"/m);
    await editor.document.save();
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const found = vscode.languages.getDiagnostics(uri).map(({ message }) => message);
    assert.deepEqual(found, []);
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
  });
});

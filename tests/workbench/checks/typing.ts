import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { type After, flickers } from '../../language/typing/judge.ts';
import { open, ruleOf, until, views } from '../editor.ts';

/** So many keys are pressed; what comes after them is left out. */
const keys = 600;

/** Pressed for the end of a block: the editor has written its brace already, below the cursor. */
async function pastBrace(): Promise<void> {
  await vscode.commands.executeCommand('cursorDown');
  await vscode.commands.executeCommand('cursorEnd');
}

/** The text of the sled deck as keys: the editor indents new lines itself. */
function* keysOf(source: string): Generator<string | typeof pastBrace> {
  for (const [number, line] of source.split('\n').entries()) {
    const words = line.trimStart();
    if (words === '}') {
      yield pastBrace;
      continue;
    }
    if (number > 0) yield '\n';
    yield* words;
  }
}

describe('the sled deck, typed from nothing', () => {
  const all: After[] = [];
  let written = '';
  let folder: vscode.Uri | undefined;

  before(async function () {
    this.timeout(300_000);
    const source = (await open('sled_deck.layup')).getText();
    folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    assert.ok(folder);
    const file = vscode.Uri.joinPath(folder, 'typed.layup');
    await vscode.workspace.fs.writeFile(file, new Uint8Array());
    const document = await open('typed.layup');
    const { changes } = await views();
    let told = 0;
    const listener = changes.onDidChange((uris) => {
      if (uris.has(document.uri.toString())) told += 1;
    });
    let pressed = 0;
    for (const key of keysOf(source)) {
      if (pressed >= keys) break;
      if (typeof key !== 'string') {
        await key();
        continue;
      }
      pressed += 1;
      const seen = told;
      await vscode.commands.executeCommand('type', { text: key });
      await until(`what is found after key ${pressed}`, () => (told > seen ? true : undefined));
      // Findings come right behind the word that figures may have changed.
      await new Promise((resolve) => setTimeout(resolve, 20));
      const { active } = vscode.window.activeTextEditor?.selection ?? new vscode.Selection(0, 0, 0, 0);
      all.push({
        line: active.line,
        typed: document.lineAt(active.line).text.slice(0, active.character),
        found: vscode.languages.getDiagnostics(document.uri).map((each) => ({
          rule: ruleOf(each),
          message: each.message,
          line: each.range.start.line,
        })),
      });
    }
    listener.dispose();
    written = document.getText();
  });

  after(async () => {
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    if (folder !== undefined) await vscode.workspace.fs.delete(vscode.Uri.joinPath(folder, 'typed.layup'));
  });

  it('stands there as it was meant: indented, with its brackets closed', () => {
    assert.equal(all.length, keys);
    assert.match(written, /^recipe sled_deck "Rescue sled deck" \{$/m);
    assert.match(written, /^ {4}outline rounded 1180 mm by 420 mm corner 140 mm$/m);
    assert.equal(written.split('{').length, written.split('}').length);
  });

  it('nothing flickers: no finding of a line that is not touched goes and comes back', () => {
    assert.deepEqual(flickers(all), []);
  });

  it('what is half typed brings nothing on other lines', () => {
    const half = all.filter(({ line, found }) => found.some((each) => each.line === line));
    assert.ok(half.length > 100, `${half.length} half typed lines`);
    for (const [i, { line, typed, found }] of all.entries()) {
      const before = all[i - 1];
      if (before === undefined || before.line !== line || !found.some((each) => each.line === line)) continue;
      const elsewhere = (of: After): string[] =>
        of.found.filter((each) => each.line !== line).map(({ rule, message }) => `${rule}: ${message}`);
      const news = elsewhere({ line, typed, found }).filter((each) => !elsewhere(before).includes(each));
      const reads = /^(line|name|unit)\//;
      assert.deepEqual(
        news.filter((each) => !reads.test(each)),
        [],
        `after "${typed}"`,
      );
    }
  });
});

import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { find, open, replace, revertAll, until } from '../editor.ts';

const whole = (document: vscode.TextDocument): vscode.Range => new vscode.Range(0, 0, document.lineCount, 0);

const wordsOf = ({ label }: vscode.InlayHint): string =>
  typeof label === 'string' ? label : label.map(({ value }) => value).join('');

/** The hint of a line, once the lines of the document have some. */
const hintOn = (document: vscode.TextDocument, pattern: RegExp): Promise<string> =>
  until(`figures beside ${pattern}`, async () => {
    const hints = await vscode.commands.executeCommand<vscode.InlayHint[]>(
      'vscode.executeInlayHintProvider',
      document.uri,
      whole(document),
    );
    const { line } = find(document, pattern).start;
    const found = hints.find(({ position }) => position.line === line);
    return found && wordsOf(found);
  });

const lensesOf = (document: vscode.TextDocument): Promise<readonly vscode.Command[]> =>
  until('lenses above the recipe', async () => {
    const lenses = await vscode.commands.executeCommand<vscode.CodeLens[]>(
      'vscode.executeCodeLensProvider',
      document.uri,
      20,
    );
    const commands = lenses.flatMap(({ command }) => (command === undefined ? [] : [command]));
    return commands.length > 0 ? commands : undefined;
  });

describe('figures beside the text', () => {
  after(revertAll);

  it('tell mass and thickness of a layer, and keep them while its line is half typed', async () => {
    const document = await open('sled_deck.layup');
    const before = await hintOn(document, /^ *core body/);
    assert.match(before, /\d g · to [\d.]+ mm/);
    await replace(document, find(document, /^ *core body \w+ 20( mm)/), '');
    const now = await until('the mark of old figures', async () => {
      const words = await hintOn(document, /^ *core body/);
      return words.endsWith('?') ? words : undefined;
    });
    assert.equal(now.slice(0, -1), before.slice(0, -1));
    await revertAll();
  });

  it('stand above the recipe, and open its report and its findings', async () => {
    const document = await open('first_try.layup');
    const [mass, thickness, resin, cost, findings] = await lensesOf(document);
    const titles = [mass, thickness, resin, cost, findings].map((lens) => lens?.title.split(/ [\d?u]/)[0]);
    assert.deepEqual(titles, ['mass', 'thickness', 'resin to mix', 'cost', 'open findings']);
    assert.ok(cost !== undefined && findings !== undefined);
    await vscode.commands.executeCommand(cost.command, ...(cost.arguments ?? []));
    const page = await until('the report', () =>
      vscode.workspace.textDocuments.find(({ uri }) => uri.scheme === 'laybook-report'),
    );
    const heads = page.getText().match(/^## .*/gm) ?? [];
    assert.equal(heads[0], '## Cost of one part');
    assert.ok(heads.length > 3, heads.join());
    // laid out, not as text
    assert.ok(!vscode.window.visibleTextEditors.some((editor) => editor.document === page));
    await vscode.commands.executeCommand(findings.command, ...(findings.arguments ?? []));
    const editor = vscode.window.activeTextEditor;
    assert.equal(editor?.document.uri.toString(), document.uri.toString());
    const at = editor.selection.active;
    assert.ok(
      vscode.languages.getDiagnostics(document.uri).some(({ range }) => range.start.isEqual(at)),
      `a finding begins at ${at.line + 1}:${at.character + 1}`,
    );
  });
});

import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import * as vscode from 'vscode';
import { findingsOf, open, revertAll, ruleOf, until } from '../editor.ts';

/** Quick fixes of a range that change the text themselves. */
const fixesAt = async (document: vscode.TextDocument, range: vscode.Range): Promise<vscode.CodeAction[]> => {
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    document.uri,
    range,
    vscode.CodeActionKind.QuickFix.value,
    20,
  );
  return actions.filter(({ edit }) => edit !== undefined && edit.size > 0);
};

describe('quick fix', () => {
  after(revertAll);

  it('mends a wrap that is too short, and the finding goes', async () => {
    const document = await open('first_try.layup');
    const count = (): number =>
      vscode.languages.getDiagnostics(document.uri).filter((each) => ruleOf(each) === 'wrap/short').length;
    const [finding] = await findingsOf(document, 'wrap/short');
    assert.ok(finding);
    const before = count();
    // The one that the light bulb marks as the way to mend it; others may accept the finding.
    const fix = await until('a quick fix', async () => {
      const fixes = await fixesAt(document, finding.range);
      return fixes.find(({ isPreferred }) => isPreferred) ?? fixes[0];
    });
    assert.ok(fix.edit && (await vscode.workspace.applyEdit(fix.edit)));
    await until('one finding fewer', () => (count() < before ? true : undefined));
  });
});

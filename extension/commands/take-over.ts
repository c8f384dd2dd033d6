import * as vscode from 'vscode';
import type { WireOffer } from '../../language/protocol/paper.ts';

/** Lets the reader choose which values of the builds the book takes over; the editor shows each edit before it is made. */
export async function takeOver(offers: readonly WireOffer[]): Promise<void> {
  if (offers.length === 0) {
    await vscode.window.showInformationMessage(
      vscode.l10n.t('The builds say nothing else than the book, or there are too few of them.'),
    );
    return;
  }
  const chosen = await vscode.window.showQuickPick(
    offers.map((offer) => ({ label: offer.line, detail: offer.says, offer })),
    { canPickMany: true, placeHolder: vscode.l10n.t('Values that the book takes over') },
  );
  if (chosen === undefined || chosen.length === 0) return;
  const edit = new vscode.WorkspaceEdit();
  for (const { offer } of chosen) {
    const range = new vscode.Range(offer.from.line, offer.from.character, offer.to.line, offer.to.character);
    edit.replace(vscode.Uri.parse(offer.uri), range, offer.text, {
      label: offer.line,
      description: offer.says,
      needsConfirmation: true,
    });
  }
  await vscode.workspace.applyEdit(edit);
}

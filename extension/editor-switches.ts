/** Says once that the editor shows no figures beside the text because a switch of its own is off while ours are on. */
import * as vscode from 'vscode';

const { t } = vscode.l10n;

interface Switch {
  readonly key: string;
  isOff(editor: vscode.WorkspaceConfiguration): boolean;
  /** settings of ours that are in vain while it is off */
  readonly ours: readonly string[];
}

const switches: readonly Switch[] = [
  {
    key: 'editor.inlayHints.enabled',
    isOff: (editor) => editor.get('inlayHints.enabled') === 'off',
    ours: ['hints.mass', 'hints.thickness', 'hints.cost', 'hints.minutes', 'hints.amount'],
  },
  { key: 'editor.codeLens', isOff: (editor) => editor.get('codeLens') === false, ours: ['lens'] },
];

const saidKey = (key: string): string => `laybook.said.${key}`;

/** Looks when a recipe is first shown; what was said is remembered, so that it is said once and never again. */
export function watchEditorSwitches(said: vscode.Memento): vscode.Disposable {
  const look = async (): Promise<void> => {
    const document = vscode.window.activeTextEditor?.document;
    if (document?.languageId !== 'layup') return;
    const editor = vscode.workspace.getConfiguration('editor', document);
    const own = vscode.workspace.getConfiguration('laybook', document);
    for (const { key, isOff, ours } of switches) {
      if (said.get(saidKey(key)) === true || !isOff(editor) || !ours.some((each) => own.get(each) === true)) continue;
      await said.update(saidKey(key), true);
      const open = t('Open the Setting');
      const words = t('Laybook has figures to show beside the text, but {0} is off in this editor.', key);
      if ((await vscode.window.showInformationMessage(words, open)) === open) {
        await vscode.commands.executeCommand('workbench.action.openSettings', key);
      }
    }
  };
  void look();
  return vscode.window.onDidChangeActiveTextEditor(() => void look());
}

/** The entry of recipe files in the editor's language status: recipe at the cursor, units, whether the server runs. */
import * as vscode from 'vscode';
import { type RecipeHead, recipeHeadAt } from './recipe-head.ts';

const { t } = vscode.l10n;

/** What is needed of the language client. */
export interface Server {
  /** as vscode-languageclient numbers it: 1 stopped, 2 running, 3 starting */
  readonly state: number;
  onDidChangeState(listener: () => void): vscode.Disposable;
}

const running = 2;
const starting = 3;

function serverWords(state: number): string {
  if (state === running) return t('ready');
  return state === starting ? t('starting') : t('stopped');
}

/** By the values of the setting. */
const unitWords = (units: string): string =>
  units === 'us' ? t('US customary units') : units === 'both' ? t('SI and US customary units') : t('SI units');

const nameOf = (head: RecipeHead | undefined): string =>
  head === undefined ? t('no recipe') : head.size === undefined ? head.recipe : `${head.recipe} ${head.size}`;

export function showStatus(server: Server): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem('laybook.status', { language: 'layup' });
  item.name = 'Laybook';
  const update = (): void => {
    const editor = vscode.window.activeTextEditor;
    if (editor?.document.languageId !== 'layup') return;
    const { document, selection } = editor;
    const lines = (index: number): string => document.lineAt(index).text;
    const units = vscode.workspace.getConfiguration('laybook', document).get('units', 'si');
    item.text = nameOf(recipeHeadAt(lines, document.lineCount, selection.active.line));
    item.detail = `${unitWords(units)} · ${serverWords(server.state)}`;
    item.busy = server.state === starting;
    const stopped = server.state !== running && server.state !== starting;
    item.severity = stopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
    item.command = stopped
      ? { command: 'laybook.restartServer', title: t('Start Again') }
      : { command: 'workbench.action.openSettings', title: t('Settings'), arguments: ['laybook.'] };
  };
  update();
  return vscode.Disposable.from(
    item,
    server.onDidChangeState(update),
    vscode.window.onDidChangeActiveTextEditor(update),
    vscode.window.onDidChangeTextEditorSelection(update),
    vscode.workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration('laybook')) update();
    }),
  );
}

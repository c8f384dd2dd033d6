import * as vscode from 'vscode';
import type { PaperKind, PaperResult } from '../../language/protocol/paper.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { openGiven } from '../open-given.ts';
import { OnePanel } from '../page/one-panel.ts';
import { recipeHere } from '../recipe-asked.ts';
import type { Server } from '../server.ts';
import { PaperPanel, paperViewType, readPaperOf } from './paper-panel.ts';

/** The one page of paper of a window: the build sheet of a recipe, or its records. */
export class Papers implements vscode.Disposable {
  private readonly panel: OnePanel<PaperPanel>;
  private readonly subscriptions: vscode.Disposable;

  constructor(extension: vscode.Uri, server: Server, changes: FigureChanges) {
    this.panel = new OnePanel({
      type: paperViewType,
      extension,
      fill: (panel, kept) => {
        const about = readPaperOf(kept);
        return about && new PaperPanel(panel, extension, server, changes, about);
      },
    });
    this.subscriptions = vscode.Disposable.from(
      this.panel,
      vscode.commands.registerCommand('laybook.showSheet', (given?: unknown) => this.show('sheet', given)),
      vscode.commands.registerCommand('laybook.showRecords', (given?: unknown) => this.show('records', given)),
      vscode.commands.registerCommand('laybook.printPaper', () => this.print()),
      vscode.commands.registerCommand('laybook.savePaper', () => this.save()),
      vscode.commands.registerCommand('laybook.takeOverValues', () => this.panel.current?.takeOver()),
    );
  }

  /** What is shown; none while there is no paper. */
  get now(): PaperResult | undefined {
    return this.panel.current?.now;
  }

  /** The page as a file, for who tests it. */
  file(form: 'html' | 'pdf'): ReturnType<PaperPanel['file']> {
    return this.panel.current?.file(form) ?? Promise.resolve(undefined);
  }

  dispose(): void {
    this.subscriptions.dispose();
  }

  private async show(kind: PaperKind, given: unknown): Promise<void> {
    await openGiven(given);
    const named = readPaperOf({ kind, ...(typeof given === 'object' ? given : {}) });
    const here = recipeHere();
    const about = named ?? (here && { kind, ...here });
    if (about === undefined) {
      await vscode.window.showInformationMessage(
        vscode.l10n.t('Put the cursor into a recipe first: its page is shown beside it.'),
      );
      return;
    }
    if (this.panel.current === undefined) this.panel.open(about.recipe, about);
    else this.panel.current.show(about);
  }

  /** A page of an editor cannot print: a browser can, and opens what is written here. */
  private async print(): Promise<void> {
    const made = await this.panel.current?.file('html');
    if (made === undefined) return;
    const folder = temporary();
    if (folder === undefined) return this.save();
    const file = vscode.Uri.joinPath(folder, made.name);
    await vscode.workspace.fs.createDirectory(folder);
    await vscode.workspace.fs.writeFile(file, made.bytes);
    await vscode.env.openExternal(file);
  }

  private async save(): Promise<void> {
    const { current } = this.panel;
    const made = await current?.file(current.of.kind === 'sheet' ? 'pdf' : 'html');
    if (current === undefined || made === undefined) return;
    const beside = vscode.Uri.joinPath(vscode.Uri.parse(current.of.uri), '..', made.name);
    const ending = made.name.slice(made.name.lastIndexOf('.') + 1);
    const to = await vscode.window.showSaveDialog({
      defaultUri: beside,
      filters: { [ending.toUpperCase()]: [ending] },
    });
    if (to !== undefined) await vscode.workspace.fs.writeFile(to, made.bytes);
  }
}

/** A folder of the machine that the extension runs on, for what is only looked at; none in a browser. */
function temporary(): vscode.Uri | undefined {
  // on another machine a file is out of reach of the browser
  if (vscode.env.remoteName !== undefined || vscode.env.uiKind === vscode.UIKind.Web) return undefined;
  const folder = typeof process === 'undefined' ? undefined : (process.env.TMPDIR ?? process.env.TEMP ?? '/tmp');
  return folder === undefined ? undefined : vscode.Uri.joinPath(vscode.Uri.file(folder), 'laybook');
}

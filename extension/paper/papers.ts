import * as vscode from 'vscode';
import type { PaperKind, PaperResult } from '../../language/protocol/paper.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { openGiven } from '../open-given.ts';
import { pageOptions } from '../page/page.ts';
import { recipeHere } from '../recipe-asked.ts';
import type { Server } from '../server.ts';
import { type PaperOf, PaperPanel, paperViewType, readPaperOf } from './paper-panel.ts';

/** The one page of paper of a window: the build sheet of a recipe, or its records. */
export class Papers implements vscode.Disposable {
  private readonly extension: vscode.Uri;
  private readonly server: Server;
  private readonly changes: FigureChanges;
  private readonly subscriptions: vscode.Disposable;
  private current: PaperPanel | undefined;

  constructor(extension: vscode.Uri, server: Server, changes: FigureChanges) {
    this.extension = extension;
    this.server = server;
    this.changes = changes;
    this.subscriptions = vscode.Disposable.from(
      vscode.commands.registerCommand('laybook.showSheet', (given?: unknown) => this.show('sheet', given)),
      vscode.commands.registerCommand('laybook.showRecords', (given?: unknown) => this.show('records', given)),
      vscode.commands.registerCommand('laybook.printPaper', () => this.print()),
      vscode.commands.registerCommand('laybook.savePaper', () => this.save()),
      vscode.commands.registerCommand('laybook.takeOverValues', () => this.current?.takeOver()),
      vscode.window.registerWebviewPanelSerializer(paperViewType, {
        deserializeWebviewPanel: async (panel, state) => {
          const about = readPaperOf(state);
          if (about === undefined) return panel.dispose();
          panel.webview.options = pageOptions(this.extension);
          this.take(panel, about);
        },
      }),
    );
  }

  /** What is shown; none while there is no paper. */
  get now(): PaperResult | undefined {
    return this.current?.now;
  }

  /** The page as a file, for who tests it. */
  file(form: 'html' | 'pdf'): ReturnType<PaperPanel['file']> {
    return this.current?.file(form) ?? Promise.resolve(undefined);
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
    if (this.current !== undefined) return this.current.show(about);
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.take(
      vscode.window.createWebviewPanel(paperViewType, about.recipe, column, pageOptions(this.extension)),
      about,
    );
  }

  private take(panel: vscode.WebviewPanel, about: PaperOf): void {
    const made = new PaperPanel(panel, this.extension, this.server, this.changes, about);
    this.current = made;
    panel.onDidDispose(() => {
      if (this.current === made) this.current = undefined;
    });
  }

  /** A page of an editor cannot print: a browser can, and opens what is written here. */
  private async print(): Promise<void> {
    const made = await this.current?.file('html');
    if (made === undefined) return;
    const folder = temporary();
    if (folder === undefined) return this.save();
    const file = vscode.Uri.joinPath(folder, made.name);
    await vscode.workspace.fs.createDirectory(folder);
    await vscode.workspace.fs.writeFile(file, made.bytes);
    await vscode.env.openExternal(file);
  }

  private async save(): Promise<void> {
    const form = this.current?.of.kind === 'sheet' ? 'pdf' : 'html';
    const made = (await this.current?.file(form)) ?? undefined;
    if (made === undefined || this.current === undefined) return;
    const beside = vscode.Uri.joinPath(vscode.Uri.parse(this.current.of.uri), '..', made.name);
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

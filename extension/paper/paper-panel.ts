import * as vscode from 'vscode';
import { fromBase64 } from '../../language/protocol/base64.ts';
import {
  type PaperKind,
  type PaperParams,
  type PaperResult,
  paperKinds,
  paperRequest,
} from '../../language/protocol/paper.ts';
import { takeOver } from '../commands/take-over.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { Latest } from '../latest.ts';
import { pageOf } from '../page/page.ts';
import { type AskedRecipe, recipeGiven } from '../recipe-asked.ts';
import { ask, type Server } from '../server.ts';
import { pastOf, revisionOf } from './git.ts';

export const paperViewType = 'laybook.paper';
const pauseMs = 60;

/** Whose paper is shown. */
export interface PaperOf extends AskedRecipe {
  readonly kind: PaperKind;
}

export function readPaperOf(given: unknown): PaperOf | undefined {
  const about = recipeGiven(given);
  const kind = paperKinds.find((each) => each === (given as { readonly kind?: unknown } | null)?.kind);
  return about && kind && { kind, ...about };
}

/** A page of paper beside the text: it follows the text, and never takes the focus from it. */
export class PaperPanel {
  private readonly panel: vscode.WebviewPanel;
  private readonly server: Server;
  private readonly latest = new Latest(() => this.update(), pauseMs);
  private about: PaperOf;
  private version = 0;
  private shown: PaperResult | undefined;
  /** books of earlier revisions, asked of git once */
  private past: PaperParams['past'];

  constructor(
    panel: vscode.WebviewPanel,
    extension: vscode.Uri,
    server: Server,
    changes: FigureChanges,
    about: PaperOf,
  ) {
    this.panel = panel;
    this.server = server;
    this.about = about;
    const subscriptions = vscode.Disposable.from(
      changes.onDidChange(() => this.latest.request()),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === 'layup') this.latest.request();
      }),
      vscode.workspace.onDidChangeConfiguration((event) => {
        if (event.affectsConfiguration('laybook')) this.latest.request();
      }),
      panel.webview.onDidReceiveMessage((message: unknown) => {
        if (message === 'ready') this.latest.request();
      }),
    );
    panel.onDidDispose(() => {
      this.latest.dispose();
      subscriptions.dispose();
    });
    panel.webview.html = pageOf(panel.webview, extension, {
      title: panel.title,
      files: 'paper',
      body: '<main id="paper"></main>',
      words: { old: vscode.l10n.t('The text cannot be read just now: this is the last page.') },
    });
  }

  /** What is shown, for who tests it. */
  get now(): PaperResult | undefined {
    return this.shown;
  }

  get of(): PaperOf {
    return this.about;
  }

  show(about: PaperOf): void {
    this.about = about;
    this.past = undefined;
    this.panel.reveal(undefined, true);
    this.latest.request();
  }

  /** The page as a file of HTML or PDF, to print. */
  async file(form: 'html' | 'pdf'): Promise<{ readonly name: string; readonly bytes: Uint8Array } | undefined> {
    const { recipe, size, kind } = this.about;
    const made = await this.ask(form);
    const bytes =
      made.html !== undefined
        ? new TextEncoder().encode(made.html)
        : made.base64 === undefined
          ? undefined
          : fromBase64(made.base64);
    if (bytes === undefined) {
      if (made.nothing !== undefined) void vscode.window.showWarningMessage(made.nothing);
      return undefined;
    }
    if (made.lacking !== undefined && made.lacking.length > 0)
      void vscode.window.showWarningMessage(
        vscode.l10n.t(
          'The font has no letters for {0}: the setting laybook.sheet.font names one that has them.',
          made.lacking.join(' '),
        ),
      );
    const ending = made.html === undefined ? 'pdf' : 'html';
    return { name: `${[recipe, ...(size === undefined ? [] : [size]), kind].join('-')}.${ending}`, bytes };
  }

  /** Values that the builds come to: each an edit that the reader accepts or leaves. */
  async takeOver(): Promise<void> {
    await takeOver(this.shown?.offers ?? []);
  }

  private async update(): Promise<void> {
    const made = await this.ask('body');
    if (made.wantsPast !== undefined && this.past === undefined) {
      this.past = await pastOf(vscode.Uri.parse(this.about.uri), made.wantsPast);
      if (this.past.length > 0) return this.update();
    }
    this.shown = made;
    if (made.title !== undefined) this.panel.title = made.title;
    const { body, style, nothing } = made;
    await this.panel.webview.postMessage({ version: this.version++, about: this.about, body, style, nothing });
  }

  private async ask(form: PaperParams['form']): Promise<PaperResult> {
    const settings = vscode.workspace.getConfiguration('laybook.sheet');
    const font = settings.get<string>('font', '');
    const git = await revisionOf(vscode.Uri.parse(this.about.uri));
    const params: PaperParams = {
      ...this.about,
      form,
      paper: settings.get<'a4' | 'letter'>('paper', 'a4'),
      ...(font === '' ? {} : { font }),
      ...(git === undefined ? {} : { git }),
      ...(this.past === undefined ? {} : { past: this.past }),
    };
    return ask<PaperResult>(this.server, paperRequest, params);
  }
}

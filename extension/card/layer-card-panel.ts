import * as vscode from 'vscode';
import {
  type LayerCard,
  type LayerCardParams,
  type LayerCardResult,
  type LayerName,
  layerCardRequest,
} from '../../language/protocol/layer-card.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { Latest } from '../latest.ts';
import { openPlace } from '../open-place.ts';
import { localised, pageOf } from '../page/page.ts';
import { ask, type Server } from '../server.ts';
import { cardText } from './card-text.ts';
import { type CardState, type KeptState, type PageMessage, readPageMessage, type ShowMessage } from './messages.ts';
import { knownPlace } from './places.ts';
import { type Shown, shownNow } from './shown.ts';
import { words } from './webview/words.ts';

export const cardViewType = 'laybook.layerCard';

/** Keys come faster than this while somebody types or walks through the text. */
const pauseMs = 80;

/** The card of a layer beside the text. It follows the cursor until it is pinned, and never takes the focus from the text. */
export class LayerCardPanel {
  private readonly panel: vscode.WebviewPanel;
  private readonly server: Server;
  private readonly subscriptions: vscode.Disposable[];
  private readonly latest = new Latest(() => this.update(), pauseMs);
  private about: LayerCardParams | undefined;
  private shown: Shown | undefined;
  private empty: Pick<CardState, 'nothing'> & { readonly firstLayer?: LayerName } = {};
  private pinned = false;
  private movesCursor = false;
  private version = 0;
  /** the line that the card itself has put the cursor on */
  private ownLine: number | undefined;

  constructor(
    panel: vscode.WebviewPanel,
    extension: vscode.Uri,
    server: Server,
    changes: FigureChanges,
    kept?: KeptState,
  ) {
    this.panel = panel;
    this.server = server;
    if (kept !== undefined) {
      this.about = { uri: kept.uri, layer: kept.layer };
      this.pinned = kept.pinned;
      this.movesCursor = kept.movesCursor;
    }
    this.subscriptions = [
      panel.webview.onDidReceiveMessage((message: unknown) => {
        const read = readPageMessage(message);
        if (read !== undefined) void this.take(read);
      }),
      panel.onDidChangeViewState(() => this.latest.request()),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.follow(textEditor)),
      vscode.window.onDidChangeActiveTextEditor((editor) => editor && this.follow(editor)),
      changes.onDidChange((uris) => {
        const { uri } = this.about ?? {};
        if (uri !== undefined && uris.has(vscode.Uri.parse(uri).toString())) this.latest.request();
      }),
      vscode.workspace.onDidChangeConfiguration((event) => {
        if (event.affectsConfiguration('laybook')) this.latest.request();
      }),
    ];
    panel.onDidDispose(() => {
      this.latest.dispose();
      for (const each of this.subscriptions) each.dispose();
    });
    panel.webview.html = pageOf(panel.webview, extension, {
      title: vscode.l10n.t('Layer card'),
      files: 'layer-card',
      body: '<div id="aloud" role="status" aria-live="polite"></div>\n<div id="card"></div>',
      words,
    });
    if (vscode.window.activeTextEditor !== undefined) this.follow(vscode.window.activeTextEditor);
    this.latest.request();
  }

  reveal(): void {
    this.panel.reveal(undefined, true);
  }

  pin(on = !this.pinned): void {
    this.pinned = on;
    this.send();
    if (!on && vscode.window.activeTextEditor !== undefined) this.follow(vscode.window.activeTextEditor);
  }

  async copy(): Promise<void> {
    if (this.shown === undefined) return;
    await vscode.env.clipboard.writeText(cardText(this.shown.card, localised(words)));
    vscode.window.setStatusBarMessage(vscode.l10n.t('The layer card was copied.'), 3000);
  }

  /** What is shown now, for who tests it. */
  get state(): CardState {
    const { shown, empty, pinned, movesCursor } = this;
    if (shown !== undefined) return { ...shown, pinned, movesCursor };
    return { nothing: empty.nothing, first: empty.firstLayer !== undefined, pinned, movesCursor };
  }

  private follow({ document, selection }: vscode.TextEditor): void {
    if (this.pinned || document.languageId !== 'layup') return;
    const { line, character } = selection.active;
    if (line === this.ownLine) return;
    this.ownLine = undefined;
    this.about = { uri: document.uri.toString(), position: { line, character } };
    this.latest.request();
  }

  private async update(): Promise<void> {
    const { about } = this;
    if (about === undefined || !this.panel.visible) {
      if (about === undefined) this.send();
      return;
    }
    const answer = await this.answer(about);
    // the cursor went on meanwhile: the next answer is on its way
    if (answer === undefined || about !== this.about) return;
    const { layer, uri } = this.shown?.card ?? {};
    // off the stack, in the same recipe: the layer stays, its figures are told anew
    if (
      answer.card === undefined &&
      answer.broken === undefined &&
      about.position !== undefined &&
      layer !== undefined
    ) {
      if (uri === about.uri && answer.first?.recipe === layer.recipe) {
        this.about = { uri, layer };
        return this.update();
      }
    }
    this.shown = shownNow(this.shown, answer);
    this.empty = { nothing: answer.nothing ?? answer.broken?.words, firstLayer: answer.first };
    this.send();
  }

  private async answer(params: LayerCardParams): Promise<LayerCardResult | undefined> {
    try {
      return await ask<LayerCardResult>(this.server, layerCardRequest, params);
    } catch {
      // the text changed on the way, or the server restarts: what is shown stays until figures are told of again
      return undefined;
    }
  }

  private send(): void {
    const message: ShowMessage = { kind: 'show', version: ++this.version, state: this.state };
    void this.panel.webview.postMessage(message);
  }

  private async take(message: PageMessage): Promise<void> {
    const card = this.shown?.card;
    switch (message.kind) {
      case 'ready':
        return this.send();
      case 'copy':
        return this.copy();
      case 'pin':
        return this.pin(message.on);
      case 'moveCursor':
        this.movesCursor = message.on;
        return this.send();
      case 'first':
        return this.goTo(this.about?.uri, this.empty.firstLayer);
      case 'step':
        return this.goTo(card?.uri, card && layerOf(card, message.key));
      case 'open': {
        // a page opens nothing but what its card speaks of
        const place = card && knownPlace(card, message);
        return place && openPlace(place);
      }
    }
  }

  /** Shows another layer; where the reader wants it, the cursor goes there too, and the focus stays. */
  private async goTo(uri: string | undefined, layer: LayerName | undefined): Promise<void> {
    if (uri === undefined || layer === undefined) return;
    this.about = { uri, layer };
    await this.update();
    const place = this.shown?.card.place;
    if (!this.movesCursor || place === undefined) return;
    const editor = vscode.window.visibleTextEditors.find(
      ({ document }) => document.uri.toString() === vscode.Uri.parse(place.uri).toString(),
    );
    if (editor === undefined) return;
    const at = new vscode.Position(place.line, place.character);
    this.ownLine = place.line;
    editor.selection = new vscode.Selection(at, at);
    editor.revealRange(new vscode.Range(at, at), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  }
}

/** A layer of the stack that the card shows. */
function layerOf(card: LayerCard, key: string): LayerName | undefined {
  const known = [...card.stack.layers.map((band) => band.key), ...card.touches.map((touch) => touch.layer?.key)];
  return known.includes(key) ? { ...card.layer, key } : undefined;
}

import * as vscode from 'vscode';
import { fromBase64 } from '../../language/protocol/base64.ts';
import {
  type DrawingParams,
  type DrawingResult,
  type DrawingView,
  type DrawnRecipe,
  drawingRequest,
  type Picture,
} from '../../language/protocol/drawing.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { Latest } from '../latest.ts';
import { openPlace } from '../open-place.ts';
import { pageOf } from '../page/page.ts';
import { ask, type Server } from '../server.ts';
import { groupsOnLine } from './chosen.ts';
import { bytesOf, madeBy, saveAs } from './files.ts';
import {
  type EditorMessage,
  type KeptState,
  type PageMessage,
  type PlanState,
  readPageMessage,
  type SaveFormat,
} from './messages.ts';
import { marksOf, type Shown, shownNow } from './shown.ts';
import { words } from './webview/words.ts';

export const planViewType = 'laybook.plan';

/** Keys come faster than this while somebody types or walks through the text. */
const pauseMs = 30;
/** of an image, along its longer side */
const imagePixels = 3000;

interface Place {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

/** What is shown now, for who tests it. */
export interface PlanNow extends PlanState {
  readonly picture?: Picture;
  readonly chosen: readonly string[];
}

/** The drawing of a recipe beside the text. It follows the cursor, and the cursor follows it; it never takes the focus from the text. */
export class PlanPanel {
  private readonly panel: vscode.WebviewPanel;
  private readonly server: Server;
  private readonly latest = new Latest(() => this.update(), pauseMs);
  private view: DrawingView = 'plan';
  private follows = true;
  private cursor: Place | undefined;
  /** a recipe that was named, and not found at the cursor */
  private about: { readonly uri: string; readonly recipe: DrawnRecipe } | undefined;
  /** that the reader wants to see */
  private size: string | undefined;
  private shown: Shown | undefined;
  private nothing: string | undefined;
  private chosen: readonly string[] = [];
  /** what the page has */
  private sent: Record<string, string> = {};
  private version = 0;
  private image: ((base64: string | undefined) => void) | undefined;

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
      this.view = kept.view;
      this.follows = kept.follows;
      this.about = { uri: kept.uri, recipe: kept.recipe };
    }
    const subscriptions = vscode.Disposable.from(
      panel.webview.onDidReceiveMessage((message: unknown) => {
        const read = readPageMessage(message);
        if (read !== undefined) void this.take(read);
      }),
      panel.onDidChangeViewState(() => this.latest.request()),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.follow(textEditor)),
      vscode.window.onDidChangeActiveTextEditor((editor) => editor && this.follow(editor)),
      changes.onDidChange((uris) => {
        const uri = this.shown?.picture.uri ?? this.about?.uri ?? this.cursor?.uri;
        if (uri !== undefined && uris.has(vscode.Uri.parse(uri).toString())) this.latest.request();
      }),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.uri.toString() === this.shown?.picture.uri) this.latest.request();
      }),
      vscode.workspace.onDidChangeConfiguration((event) => {
        if (event.affectsConfiguration('laybook')) this.latest.request();
      }),
    );
    panel.onDidDispose(() => {
      this.latest.dispose();
      this.image?.(undefined);
      subscriptions.dispose();
    });
    panel.webview.html = pageOf(panel.webview, extension, {
      title: vscode.l10n.t('Plan'),
      files: 'plan',
      body: '<div id="plan"></div>',
      words,
      images: true,
    });
    if (vscode.window.activeTextEditor !== undefined) this.follow(vscode.window.activeTextEditor);
    this.latest.request();
  }

  /** Shows a view of a recipe, or of that at the cursor. */
  show(view: DrawingView, about?: { readonly uri: string; readonly recipe: DrawnRecipe }): void {
    this.view = view;
    if (about !== undefined) this.about = about;
    this.panel.reveal(undefined, true);
    this.latest.request();
  }

  get now(): PlanNow {
    const { shown, chosen } = this;
    return { ...this.state(), chosen, ...(shown === undefined ? {} : { picture: shown.picture }) };
  }

  private state(): PlanState {
    const { shown, nothing, view, follows } = this;
    return {
      view,
      follows,
      ...(shown?.old === undefined ? {} : { old: shown.old }),
      ...(shown?.note === undefined ? {} : { note: shown.note }),
      ...(nothing === undefined ? {} : { nothing }),
    };
  }

  private follow({ document, selection }: vscode.TextEditor): void {
    if (document.languageId !== 'layup') return;
    const { line, character } = selection.active;
    this.cursor = { uri: document.uri.toString(), line, character };
    if (!this.follows) return;
    this.about = undefined;
    this.choose();
    this.latest.request();
  }

  /** Shapes of the line of the cursor stand out at once: what is drawn of a line is known here. */
  private choose(): void {
    const { cursor, shown } = this;
    if (cursor === undefined || shown === undefined || !this.follows) return;
    const keys = groupsOnLine(shown.picture, cursor.uri, cursor.line).map(({ key }) => key);
    if (keys.join('\n') === this.chosen.join('\n')) return;
    this.chosen = keys;
    this.post({ kind: 'choose', keys });
  }

  private async update(): Promise<void> {
    const params = this.params();
    if (params === undefined || !this.panel.visible) {
      if (params === undefined) this.post({ kind: 'show', version: ++this.version, state: this.state() });
      return;
    }
    const answer = await this.answer(params);
    // asked for something else meanwhile: its answer is on its way
    if (answer === undefined || this.view !== params.view) return;
    const before = this.shown;
    const left = answer.picture === undefined && answer.broken === undefined && before !== undefined;
    // between two recipes the last one stays
    if (left && params.position !== undefined && before.picture.uri === params.uri) {
      this.about = { uri: before.picture.uri, recipe: before.picture.recipe };
      return this.update();
    }
    this.shown = shownNow(before, answer);
    this.nothing = this.shown === undefined ? (answer.nothing ?? answer.broken?.words) : undefined;
    const fresh = this.shown?.old === undefined ? this.shown?.picture : undefined;
    this.post({
      kind: 'show',
      version: ++this.version,
      state: this.state(),
      ...(fresh === undefined ? {} : { picture: fresh }),
    });
    if (fresh !== undefined) this.sent = marksOf(fresh);
    if (this.shown === undefined) this.sent = {};
    this.choose();
  }

  private params(): DrawingParams | undefined {
    const { about, cursor, view, size, sent: known } = this;
    if (about !== undefined) return { ...about, view, known };
    if (cursor === undefined) return undefined;
    const { uri, line, character } = cursor;
    return { uri, view, position: { line, character }, known, ...(size === undefined ? {} : { size }) };
  }

  private inSize({ recipe }: DrawnRecipe): DrawnRecipe {
    return this.size === undefined ? { recipe } : { recipe, size: this.size };
  }

  private async answer(params: DrawingParams): Promise<DrawingResult | undefined> {
    try {
      return await ask<DrawingResult>(this.server, drawingRequest, params);
    } catch {
      // the text changed on the way, or the server restarts: what is shown stays until figures are told of again
      return undefined;
    }
  }

  private post(message: EditorMessage): void {
    void this.panel.webview.postMessage(message);
  }

  private async take(message: PageMessage): Promise<void> {
    const picture = this.shown?.picture;
    switch (message.kind) {
      case 'ready':
        this.sent = {};
        this.chosen = [];
        return this.update();
      case 'follow':
        this.follows = message.on;
        if (message.on && vscode.window.activeTextEditor !== undefined) this.follow(vscode.window.activeTextEditor);
        else this.hold();
        return this.update();
      case 'view':
        this.view = message.view;
        return this.update();
      case 'size':
        this.size = message.size;
        if (this.about !== undefined) this.about = { ...this.about, recipe: this.inSize(this.about.recipe) };
        return this.update();
      case 'pick':
        return this.goTo(message.key, message.open);
      case 'save':
        return picture && this.save(picture, message.format, message.without);
      case 'copy': {
        const made = picture && (await madeBy(this.server, picture, 'svg', message.without));
        if (made?.text === undefined) return;
        await vscode.env.clipboard.writeText(made.text);
        vscode.window.setStatusBarMessage(vscode.l10n.t('The drawing was copied as SVG.'), 3000);
        return;
      }
      case 'image':
        this.image?.(message.base64);
        this.image = undefined;
    }
  }

  /** Stays with the recipe that is shown. */
  private hold(): void {
    const picture = this.shown?.picture;
    if (picture !== undefined) this.about = { uri: picture.uri, recipe: picture.recipe };
  }

  /** The cursor goes to the line of a thing; the focus goes there only where the reader wants it. */
  private async goTo(key: string, open: boolean): Promise<void> {
    const place = this.shown?.picture.groups.find((group) => group.key === key)?.place;
    if (place === undefined) return;
    this.chosen = [key];
    if (open) return openPlace(place);
    const editor = vscode.window.visibleTextEditors.find(
      ({ document }) => document.uri.toString() === vscode.Uri.parse(place.uri).toString(),
    );
    if (editor === undefined) return;
    const at = new vscode.Position(place.line, place.character);
    editor.selection = new vscode.Selection(at, at);
    editor.revealRange(new vscode.Range(at, at), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  }

  private async save(picture: Picture, format: SaveFormat, without: readonly string[]): Promise<void> {
    const made = await madeBy(this.server, picture, format === 'png' ? 'svg' : format, without);
    if (made === undefined) return;
    if (format !== 'png') return saveAs(picture, format, bytesOf(made));
    const image = await this.imageOf(made.text ?? '');
    if (image !== undefined) return saveAs(picture, format, fromBase64(image));
    void vscode.window.showWarningMessage(vscode.l10n.t('The editor could not make an image of the drawing.'));
  }

  /** The page makes images: only there is a canvas, on a machine and in a browser alike. */
  private imageOf(svg: string): Promise<string | undefined> {
    this.image?.(undefined);
    return new Promise((resolve) => {
      this.image = resolve;
      this.post({ kind: 'image', svg, length: imagePixels });
    });
  }
}

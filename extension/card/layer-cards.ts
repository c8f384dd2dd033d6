import * as vscode from 'vscode';
import type { FigureChanges } from '../figures-changed.ts';
import { pageOptions } from '../page/page.ts';
import type { Server } from '../server.ts';
import { cardViewType, LayerCardPanel } from './layer-card-panel.ts';
import { type CardState, readKeptState } from './messages.ts';

/** The one layer card of a window: opened by a command, or brought back with the window. */
export class LayerCards implements vscode.Disposable {
  private readonly extension: vscode.Uri;
  private readonly server: Server;
  private readonly changes: FigureChanges;
  private readonly subscriptions: vscode.Disposable[];
  private current: LayerCardPanel | undefined;

  constructor(extension: vscode.Uri, server: Server, changes: FigureChanges) {
    this.extension = extension;
    this.server = server;
    this.changes = changes;
    this.subscriptions = [
      vscode.commands.registerCommand('laybook.showLayerCard', () => this.show()),
      vscode.commands.registerCommand('laybook.pinLayerCard', () => this.current?.pin()),
      vscode.commands.registerCommand('laybook.copyLayerCard', () => this.current?.copy()),
      vscode.window.registerWebviewPanelSerializer(cardViewType, {
        deserializeWebviewPanel: async (panel, state) => {
          panel.webview.options = pageOptions(this.extension);
          this.take(panel, state);
        },
      }),
    ];
  }

  /** What the card shows; none while there is no card. */
  get state(): CardState | undefined {
    return this.current?.state;
  }

  dispose(): void {
    for (const each of this.subscriptions) each.dispose();
  }

  private show(): void {
    if (this.current !== undefined) {
      this.current.reveal();
      return;
    }
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const title = vscode.l10n.t('Layer card');
    this.take(vscode.window.createWebviewPanel(cardViewType, title, column, pageOptions(this.extension)));
  }

  private take(panel: vscode.WebviewPanel, state?: unknown): void {
    const made = new LayerCardPanel(panel, this.extension, this.server, this.changes, readKeptState(state));
    this.current = made;
    void vscode.commands.executeCommand('setContext', 'laybook.layerCardOpen', true);
    panel.onDidDispose(() => {
      if (this.current !== made) return;
      this.current = undefined;
      void vscode.commands.executeCommand('setContext', 'laybook.layerCardOpen', false);
    });
  }
}

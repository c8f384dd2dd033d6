import * as vscode from 'vscode';
import type { FigureChanges } from '../figures-changed.ts';
import { OnePanel } from '../page/one-panel.ts';
import type { Server } from '../server.ts';
import { cardViewType, LayerCardPanel } from './layer-card-panel.ts';
import { type CardState, readKeptState } from './messages.ts';

/** The one layer card of a window: opened by a command, or brought back with the window. */
export class LayerCards implements vscode.Disposable {
  private readonly panel: OnePanel<LayerCardPanel>;
  private readonly subscriptions: vscode.Disposable;

  constructor(extension: vscode.Uri, server: Server, changes: FigureChanges) {
    this.panel = new OnePanel({
      type: cardViewType,
      extension,
      fill: (panel, kept) => new LayerCardPanel(panel, extension, server, changes, readKeptState(kept)),
      changed: (open) => void vscode.commands.executeCommand('setContext', 'laybook.layerCardOpen', open),
    });
    this.subscriptions = vscode.Disposable.from(
      this.panel,
      vscode.commands.registerCommand('laybook.showLayerCard', () => this.show()),
      vscode.commands.registerCommand('laybook.pinLayerCard', () => this.panel.current?.pin()),
      vscode.commands.registerCommand('laybook.copyLayerCard', () => this.panel.current?.copy()),
    );
  }

  /** What the card shows; none while there is no card. */
  get state(): CardState | undefined {
    return this.panel.current?.state;
  }

  dispose(): void {
    this.subscriptions.dispose();
  }

  private show(): void {
    if (this.panel.current === undefined) this.panel.open(vscode.l10n.t('Layer card'));
    else this.panel.current.reveal();
  }
}

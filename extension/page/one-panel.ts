import * as vscode from 'vscode';
import { pageOptions } from './page.ts';

interface Kind<Made> {
  /** by which the editor knows a panel of this kind again */
  readonly type: string;
  readonly extension: vscode.Uri;
  /** fills a panel; `kept` is what its page has kept, or what it is opened with: undefined where that is no such thing */
  fill(panel: vscode.WebviewPanel, kept: unknown): Made | undefined;
  /** is told when the panel is there, and when it is gone */
  changed?(open: boolean): void;
}

/** The one panel of its kind in a window: opened beside the text, which keeps the focus, or brought back with the window. */
export class OnePanel<Made> implements vscode.Disposable {
  private readonly kind: Kind<Made>;
  private readonly registered: vscode.Disposable;
  private made: Made | undefined;

  constructor(kind: Kind<Made>) {
    this.kind = kind;
    this.registered = vscode.window.registerWebviewPanelSerializer(kind.type, {
      deserializeWebviewPanel: async (panel, kept) => {
        panel.webview.options = pageOptions(kind.extension);
        this.take(panel, kept);
      },
    });
  }

  /** What fills the panel; none while there is none. */
  get current(): Made | undefined {
    return this.made;
  }

  /** Opens the panel; where there is one already, that stays as it is. */
  open(title: string, kept?: unknown): void {
    if (this.made !== undefined) return;
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const { type, extension } = this.kind;
    this.take(vscode.window.createWebviewPanel(type, title, column, pageOptions(extension)), kept);
  }

  dispose(): void {
    this.registered.dispose();
  }

  private take(panel: vscode.WebviewPanel, kept: unknown): void {
    const made = this.kind.fill(panel, kept);
    if (made === undefined) {
      panel.dispose();
      return;
    }
    this.made = made;
    this.kind.changed?.(true);
    panel.onDidDispose(() => {
      if (this.made !== made) return;
      this.made = undefined;
      this.kind.changed?.(false);
    });
  }
}

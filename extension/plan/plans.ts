import * as vscode from 'vscode';
import type { DrawingView } from '../../language/protocol/drawing.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { openGiven } from '../open-given.ts';
import { pageOptions } from '../page/page.ts';
import { recipeGiven } from '../recipe-asked.ts';
import type { Server } from '../server.ts';
import { readKeptState } from './messages.ts';
import { type PlanNow, PlanPanel, planViewType } from './plan-panel.ts';

/** The one plan of a window: opened by a command, a lens or a hover, or brought back with the window. */
export class Plans implements vscode.Disposable {
  private readonly extension: vscode.Uri;
  private readonly server: Server;
  private readonly changes: FigureChanges;
  private readonly subscriptions: vscode.Disposable;
  private current: PlanPanel | undefined;

  constructor(extension: vscode.Uri, server: Server, changes: FigureChanges) {
    this.extension = extension;
    this.server = server;
    this.changes = changes;
    this.subscriptions = vscode.Disposable.from(
      vscode.commands.registerCommand('laybook.showPlan', (given?: unknown) => this.show('plan', given)),
      vscode.commands.registerCommand('laybook.showSection', (given?: unknown) => this.show('section', given)),
      vscode.window.registerWebviewPanelSerializer(planViewType, {
        deserializeWebviewPanel: async (panel, state) => {
          panel.webview.options = pageOptions(this.extension);
          this.take(panel, state);
        },
      }),
    );
  }

  /** What the plan shows; none while there is no plan. */
  get now(): PlanNow | undefined {
    return this.current?.now;
  }

  dispose(): void {
    this.subscriptions.dispose();
  }

  private async show(view: DrawingView, given: unknown): Promise<void> {
    await openGiven(given);
    if (this.current === undefined) {
      const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      const title = vscode.l10n.t('Plan');
      this.take(vscode.window.createWebviewPanel(planViewType, title, column, pageOptions(this.extension)));
    }
    const named = recipeGiven(given);
    if (named === undefined) this.current?.show(view);
    else {
      const { uri, ...recipe } = named;
      this.current?.show(view, { uri, recipe });
    }
  }

  private take(panel: vscode.WebviewPanel, state?: unknown): void {
    const made = new PlanPanel(panel, this.extension, this.server, this.changes, readKeptState(state));
    this.current = made;
    panel.onDidDispose(() => {
      if (this.current === made) this.current = undefined;
    });
  }
}

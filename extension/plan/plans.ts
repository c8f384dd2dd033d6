import * as vscode from 'vscode';
import type { DrawingView } from '../../language/protocol/drawing.ts';
import type { FigureChanges } from '../figures-changed.ts';
import { openGiven } from '../open-given.ts';
import { OnePanel } from '../page/one-panel.ts';
import { recipeGiven } from '../recipe-asked.ts';
import type { Server } from '../server.ts';
import { readKeptState } from './messages.ts';
import { type PlanNow, PlanPanel, planViewType } from './plan-panel.ts';

/** The one plan of a window: opened by a command, a lens or a hover, or brought back with the window. */
export class Plans implements vscode.Disposable {
  private readonly panel: OnePanel<PlanPanel>;
  private readonly subscriptions: vscode.Disposable;

  constructor(extension: vscode.Uri, server: Server, changes: FigureChanges) {
    this.panel = new OnePanel({
      type: planViewType,
      extension,
      fill: (panel, kept) => new PlanPanel(panel, extension, server, changes, readKeptState(kept)),
    });
    this.subscriptions = vscode.Disposable.from(
      this.panel,
      vscode.commands.registerCommand('laybook.showPlan', (given?: unknown) => this.show('plan', given)),
      vscode.commands.registerCommand('laybook.showSection', (given?: unknown) => this.show('section', given)),
    );
  }

  /** What the plan shows; none while there is no plan. */
  get now(): PlanNow | undefined {
    return this.panel.current?.now;
  }

  dispose(): void {
    this.subscriptions.dispose();
  }

  private async show(view: DrawingView, given: unknown): Promise<void> {
    await openGiven(given);
    this.panel.open(vscode.l10n.t('Plan'));
    const named = recipeGiven(given);
    if (named === undefined) this.panel.current?.show(view);
    else {
      const { uri, ...recipe } = named;
      this.panel.current?.show(view, { uri, recipe });
    }
  }
}

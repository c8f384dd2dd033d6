/** Views and commands that ask the server: the same on every machine and in a browser. */
import * as vscode from 'vscode';
import { LayerCards } from './card/layer-cards.ts';
import { copyText } from './commands/copy-text.ts';
import { explainRule } from './commands/explain-rule.ts';
import { FigureChanges } from './figures-changed.ts';
import { compareMaterials } from './look-up/compare-materials.ts';
import { findUses } from './look-up/find-uses.ts';
import type { Server } from './server.ts';
import { serveDocuments } from './server-documents.ts';
import { Expectations } from './testing/expectations.ts';

export interface Views {
  readonly cards: LayerCards;
  readonly expectations: Expectations;
}

/** What was registered, to be disposed of with the extension; and the views, for who tests them. */
export function registerViews(
  extension: vscode.Uri,
  server: Server,
): { readonly views: Views; readonly registered: vscode.Disposable } {
  const changes = new FigureChanges(server);
  const views: Views = {
    cards: new LayerCards(extension, server, changes),
    expectations: new Expectations(server, changes),
  };
  const command = (name: string, run: (...given: unknown[]) => Promise<void>): vscode.Disposable =>
    vscode.commands.registerCommand(`laybook.${name}`, run);
  const registered = vscode.Disposable.from(
    changes,
    views.cards,
    views.expectations,
    serveDocuments(server, changes),
    command('explainRule', explainRule),
    command('copyText', copyText),
    command('findUses', (given) => findUses(server, given)),
    command('compareMaterials', (given) => compareMaterials(server, given)),
  );
  return { views, registered };
}

/** Views and commands that ask the server: the same on every machine and in a browser. */
import * as vscode from 'vscode';
import { BookView } from './book/book-view.ts';
import { LayerCards } from './card/layer-cards.ts';
import { copyText } from './commands/copy-text.ts';
import { explainRule } from './commands/explain-rule.ts';
import { writeCutFiles } from './commands/write-cut-files.ts';
import { writeRecord } from './commands/write-record.ts';
import { tellCursor } from './cursor-told.ts';
import { FigureChanges } from './figures-changed.ts';
import { compareMaterials } from './look-up/compare-materials.ts';
import { findUses } from './look-up/find-uses.ts';
import { Papers } from './paper/papers.ts';
import { Plans } from './plan/plans.ts';
import type { Server } from './server.ts';
import { serveDocuments } from './server-documents.ts';
import { Expectations } from './testing/expectations.ts';

export interface Views {
  readonly cards: LayerCards;
  readonly plans: Plans;
  readonly papers: Papers;
  readonly expectations: Expectations;
  readonly changes: FigureChanges;
}

/** What was registered, to be disposed of with the extension; and the views, for who tests them. */
export function registerViews(
  extension: vscode.Uri,
  server: Server,
): { readonly views: Views; readonly registered: vscode.Disposable } {
  const changes = new FigureChanges(server);
  const views: Views = {
    cards: new LayerCards(extension, server, changes),
    plans: new Plans(extension, server, changes),
    papers: new Papers(extension, server, changes),
    expectations: new Expectations(server, changes),
    changes,
  };
  const registered = vscode.Disposable.from(
    changes,
    views.cards,
    views.plans,
    views.papers,
    views.expectations,
    new BookView(changes),
    serveDocuments(server, changes),
    tellCursor(server),
    vscode.commands.registerCommand('laybook.explainRule', explainRule),
    vscode.commands.registerCommand('laybook.copyText', copyText),
    vscode.commands.registerCommand('laybook.findUses', (given?: unknown) => findUses(server, given)),
    vscode.commands.registerCommand('laybook.writeCutFiles', (given?: unknown) => writeCutFiles(server, given)),
    vscode.commands.registerCommand('laybook.writeRecord', (given?: unknown) => writeRecord(server, given)),
    vscode.commands.registerCommand('laybook.compareMaterials', (given?: unknown) => compareMaterials(server, given)),
  );
  return { views, registered };
}

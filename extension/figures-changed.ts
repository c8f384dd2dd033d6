import * as vscode from 'vscode';
import { type FiguresChanged, figuresChangedNotification } from '../language/protocol/expectations.ts';
import type { Server } from './server.ts';

/** Tells all who show figures which files' figures may have changed. The client takes one listener a notification: this is it. */
export class FigureChanges implements vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<ReadonlySet<string>>();
  private readonly subscription: vscode.Disposable;
  /** addresses of files, as the editor writes them */
  readonly onDidChange = this.changed.event;

  constructor(server: Server) {
    this.subscription = server.onNotification(figuresChangedNotification, (params) => {
      const { uris } = params as FiguresChanged;
      this.changed.fire(new Set(uris.map((uri) => vscode.Uri.parse(uri).toString())));
    });
  }

  dispose(): void {
    this.subscription.dispose();
    this.changed.dispose();
  }
}

import type * as vscode from 'vscode';

/** What commands and views need of the language client: the same in a process of its own and in a worker of a browser. */
export interface Server {
  /** ends when the server is there; safe to call again */
  start(): Promise<void>;
  sendRequest<Result>(method: string, params: unknown, token?: vscode.CancellationToken): Promise<Result>;
  isRunning(): boolean;
  sendNotification(method: string, params: unknown): Promise<void>;
  onNotification(method: string, handler: (params: unknown) => void): vscode.Disposable;
}

/** Asks the server, once it is there. */
export async function ask<Result>(server: Server, method: string, params: unknown): Promise<Result> {
  await server.start();
  return server.sendRequest<Result>(method, params);
}

import * as vscode from 'vscode';
import { type CursorParams, cursorNotification } from '../language/protocol/typing.ts';
import type { Server } from './server.ts';

/** Tells the server in which line of which recipe the cursor is: what it found of a line is shown as soon as the cursor has left it. */
export function tellCursor(server: Server): vscode.Disposable {
  let last = '';
  const tell = (editor: vscode.TextEditor | undefined): void => {
    const params: CursorParams =
      editor?.document.languageId === 'layup'
        ? {
            uri: editor.document.uri.toString(),
            position: { line: editor.selection.active.line, character: editor.selection.active.character },
          }
        : {};
    const line = `${params.uri} ${params.position?.line}`;
    if (line === last || !server.isRunning()) return;
    last = line;
    // A server that dies meanwhile has nothing to hold back.
    server.sendNotification(cursorNotification, params).catch(() => undefined);
  };
  return vscode.Disposable.from(
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === vscode.window.activeTextEditor) tell(textEditor);
    }),
    vscode.window.onDidChangeActiveTextEditor(tell),
  );
}

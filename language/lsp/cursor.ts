import { URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import { type CursorParams, cursorNotification } from '../protocol/typing.ts';

/** Hears where the cursor is: a line that it is not in is not being typed. */
export function followCursor(connection: Connection, { shared, typing }: WithAnalysis): void {
  connection.onNotification(cursorNotification, ({ uri, position }: CursorParams) => {
    const at = uri === undefined ? undefined : URI.parse(uri).toString();
    const document = at === undefined ? undefined : shared.workspace.TextDocuments.get(at);
    const start = position && document?.offsetAt({ line: position.line, character: 0 });
    typing.leave((other, line) => other !== at || line !== start);
  });
}

/** Documents that the server holds and the editor shows read-only: pages of rules, files of the stock library. */
import * as vscode from 'vscode';
import { type ExplainParams, type ExplainResult, explainRequest } from '../language/protocol/explain.ts';
import type { FigureChanges } from './figures-changed.ts';
import { type RuleCase, readRuleCase, rulePageScheme } from './rule-page-uri.ts';
import { ask, type Server } from './server.ts';

/** Request `laybook/stockText`: the text of a file of the stock library; none where there is no such file. */
interface StockTextParams {
  readonly uri: string;
}
interface StockTextResult {
  readonly text?: string;
}

const ruleOf = (uri: vscode.Uri): string => uri.path.replace(/^\/|\.md$/g, '');

/** The case that the address of a page carries. */
function caseOf(uri: vscode.Uri): RuleCase | undefined {
  try {
    return readRuleCase(JSON.parse(uri.query));
  } catch {
    return undefined;
  }
}

/** How the text of each kind of document is asked for, by the scheme of its address. */
const kinds: Readonly<Record<string, (server: Server, uri: vscode.Uri) => Promise<string>>> = {
  async [rulePageScheme](server, uri) {
    const found = caseOf(uri);
    const params: ExplainParams = found === undefined ? { rule: ruleOf(uri) } : { rule: ruleOf(uri), case: found };
    return (await ask<ExplainResult>(server, explainRequest, params)).markdown;
  },
  async 'layup-stock'(server, uri) {
    const params: StockTextParams = { uri: uri.toString() };
    return (await ask<StockTextResult>(server, 'laybook/stockText', params)).text ?? '';
  },
};

/** Registers all kinds of such documents; a page with a case is told anew when the figures of its recipe change. */
export function serveDocuments(server: Server, changes: FigureChanges): vscode.Disposable {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const providers = Object.entries(kinds).map(([scheme, read]) =>
    vscode.workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: (uri) => read(server, uri),
    }),
  );
  const listener = changes.onDidChange((uris) => {
    for (const { uri } of vscode.workspace.textDocuments) {
      const found = uri.scheme === rulePageScheme ? caseOf(uri) : undefined;
      if (found !== undefined && uris.has(vscode.Uri.parse(found.uri).toString())) changed.fire(uri);
    }
  });
  return vscode.Disposable.from(...providers, listener, changed);
}

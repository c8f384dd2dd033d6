/** Documents that the server holds and the editor shows read-only: pages of rules, files of the stock library. */
import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';

/** Request `laybook/explain`: the page of a rule, or the words that say there is no such rule. */
interface ExplainParams {
  readonly rule: string;
}
interface ExplainResult {
  readonly markdown: string;
}

/** Request `laybook/stockText`: the text of a file of the stock library; none where there is no such file. */
interface StockTextParams {
  readonly uri: string;
}
interface StockTextResult {
  readonly text?: string;
}

const rulePageScheme = 'laybook-rule';

/** Address of a rule's page: `laybook-rule:/wrap/short.md`. */
export const rulePageUri = (rule: string): vscode.Uri =>
  vscode.Uri.from({ scheme: rulePageScheme, path: `/${rule}.md` });

const ruleOf = (uri: vscode.Uri): string => uri.path.replace(/^\/|\.md$/g, '');

/** How the text of each kind of document is asked for, by the scheme of its address. */
const kinds: Readonly<Record<string, (client: LanguageClient, uri: vscode.Uri) => Promise<string>>> = {
  async [rulePageScheme](client, uri) {
    const params: ExplainParams = { rule: ruleOf(uri) };
    return (await client.sendRequest<ExplainResult>('laybook/explain', params)).markdown;
  },
  async 'layup-stock'(client, uri) {
    const params: StockTextParams = { uri: uri.toString() };
    return (await client.sendRequest<StockTextResult>('laybook/stockText', params)).text ?? '';
  },
};

/** Registers all kinds of such documents. */
export function serveDocuments(client: LanguageClient): vscode.Disposable {
  const providers = Object.entries(kinds).map(([scheme, read]) =>
    vscode.workspace.registerTextDocumentContentProvider(scheme, {
      async provideTextDocumentContent(uri) {
        await client.start();
        return read(client, uri);
      },
    }),
  );
  return vscode.Disposable.from(...providers);
}

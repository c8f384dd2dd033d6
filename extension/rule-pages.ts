/** The page of a rule as a read-only document of the editor. The server holds the pages. */
import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';

export const rulePageScheme = 'laybook-rule';

/** Request `laybook/explain`: the page of a rule, or the words that say there is no such rule. */
interface ExplainParams {
  readonly rule: string;
}
interface ExplainResult {
  readonly markdown: string;
}

/** Address of a rule's page: `laybook-rule:/wrap/short.md`. */
export const rulePageUri = (rule: string): vscode.Uri =>
  vscode.Uri.from({ scheme: rulePageScheme, path: `/${rule}.md` });

const ruleOf = (uri: vscode.Uri): string => uri.path.replace(/^\/|\.md$/g, '');

export class RulePages implements vscode.TextDocumentContentProvider {
  readonly #client: LanguageClient;

  constructor(client: LanguageClient) {
    this.#client = client;
  }

  async provideTextDocumentContent(uri: vscode.Uri, token: vscode.CancellationToken): Promise<string> {
    await this.#client.start();
    const params: ExplainParams = { rule: ruleOf(uri) };
    const { markdown } = await this.#client.sendRequest<ExplainResult>('laybook/explain', params, token);
    return markdown;
  }
}

import type { Connection } from 'vscode-languageserver';
import { explained } from '../view/rule-page.ts';

/** Request `laybook/explain`: the page of a rule, or the words that say there is no such rule. */
export const explainRequest = 'laybook/explain';
export interface ExplainParams {
  readonly rule: string;
}
export interface ExplainResult {
  readonly markdown: string;
}

export function serveExplanations(connection: Connection): void {
  connection.onRequest(explainRequest, ({ rule }: ExplainParams): ExplainResult => ({
    markdown: explained(rule)?.page ?? `There is no rule of the name \`${rule.replace(/[^a-z0-9/-]/gi, '')}\`.`,
  }));
}

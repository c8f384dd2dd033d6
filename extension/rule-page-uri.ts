import * as vscode from 'vscode';
import type { ExplainParams } from '../language/protocol/explain.ts';

export const rulePageScheme = 'laybook-rule';

/** Where a rule found something: the page tells of it on top. */
export type RuleCase = NonNullable<ExplainParams['case']>;

/** Address of a rule's page: `laybook-rule:/wrap/short.md`, with the case that it is opened for. */
export const rulePageUri = (rule: string, found?: RuleCase): vscode.Uri =>
  vscode.Uri.from({
    scheme: rulePageScheme,
    path: `/${rule}.md`,
    ...(found === undefined ? {} : { query: JSON.stringify(found) }),
  });

/** A case that a link or an address carries; undefined where it is none. */
export function readRuleCase(given: unknown): RuleCase | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  const { uri, position } = given as Readonly<Record<string, unknown>>;
  if (typeof uri !== 'string' || typeof position !== 'object' || position === null) return undefined;
  const { line, character } = position as Readonly<Record<string, unknown>>;
  if (!Number.isInteger(line) || !Number.isInteger(character)) return undefined;
  return { uri, position: { line: line as number, character: character as number } };
}

import type * as vscode from 'vscode';
import { rulePageUri } from './rule-page-uri.ts';

/** Every finding links to the page of its rule, which tells of the finding on top. */
export function linkFindings(uri: vscode.Uri, findings: readonly vscode.Diagnostic[]): void {
  for (const finding of findings) {
    if (finding.source !== 'laybook' || typeof finding.code !== 'string') continue;
    const { line, character } = finding.range.start;
    const target = rulePageUri(finding.code, { uri: uri.toString(), position: { line, character } });
    finding.code = { value: finding.code, target };
  }
}

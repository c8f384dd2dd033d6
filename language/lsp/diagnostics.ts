import { type Cancellation, type LangiumDocument, URI } from 'langium';
import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  type Range,
} from 'vscode-languageserver-protocol';
import type { WithAnalysis } from '../analysis/module.ts';
import type { Span } from '../lower/index.ts';
import type { Finding } from '../rules/finding.ts';
import type { Severity } from '../rules/rule.ts';
import { type Style, sayText } from '../view/text.ts';
import { styleOf } from './style.ts';

export const severityOf: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

/** What the editor is told of a document; lines that are accepted are left out. */
export async function diagnosticsOf(
  services: WithAnalysis,
  document: LangiumDocument,
  token: Cancellation.CancellationToken,
): Promise<Diagnostic[]> {
  const findings = services.steady.of(document, await services.analysis.findings(document, token));
  const style = styleOf(services);
  return findings
    .filter((finding) => finding.accepted === undefined)
    .map((finding) => diagnosticOf(services, document, finding, style));
}

export function diagnosticOf(
  services: WithAnalysis,
  document: LangiumDocument,
  finding: Finding,
  style: Style,
): Diagnostic {
  return {
    range: rangeOf(document, finding.span),
    severity: severityOf[finding.severity],
    code: finding.rule,
    source: 'laybook',
    message: sayText(finding.message, style),
    relatedInformation: finding.related.flatMap((related) => relatedOf(services, document, related, style)),
    data: { fixes: finding.fixes },
  };
}

export function rangeOf(document: LangiumDocument, span: Span): Range {
  const { textDocument } = document;
  return { start: textDocument.positionAt(span.offset), end: textDocument.positionAt(Math.max(span.end, span.offset)) };
}

/** Range in a document that is named by its address; it may be one of the stock library. */
export function locationOf(services: WithAnalysis, uri: string, span: Span): { uri: string; range: Range } | undefined {
  const document = documentAt(services, uri);
  return document === undefined ? undefined : { uri, range: rangeOf(document, span) };
}

function documentAt(services: WithAnalysis, uri: string): LangiumDocument | undefined {
  return services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
}

function relatedOf(
  services: WithAnalysis,
  document: LangiumDocument,
  related: Finding['related'][number],
  style: Style,
): DiagnosticRelatedInformation[] {
  const at =
    related.span === undefined
      ? related.at && services.analysis.locate(related.at, document)
      : { uri: document.uri.toString(), span: related.span };
  const location = at === undefined ? undefined : locationOf(services, at.uri, at.span);
  return location === undefined ? [] : [{ location, message: sayText(related.message, style) }];
}

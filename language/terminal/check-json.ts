import type { Finding } from '../rules/finding.ts';
import { safe, sayText } from '../view/text.ts';
import type { OpenBook } from './book.ts';
import type { Checked, Summary } from './check.ts';
import { type Located, relatedOf } from './places.ts';
import { siNumbers } from './si.ts';

/** Findings for machines, accepted ones among them; `schemas/check.json` describes it. */
export function checkJson(book: OpenBook, checked: readonly Checked[], summary: Summary): string {
  const findings = checked.flatMap(({ document, findings }) =>
    findings.map((finding) => {
      const file = book.nameOf(document.uri.toString());
      const { rule, severity, accepted = null } = finding;
      return {
        rule,
        severity,
        ...told(finding.message),
        ...place({ file, document: document.textDocument, span: finding.span }),
        figures: siNumbers(finding.message.figures),
        related: relatedOf(book, document, finding).map((related) => ({ ...told(related.message), ...place(related) })),
        accepted: accepted === null ? null : safe(accepted),
      };
    }),
  );
  return `${JSON.stringify({ schema: 'laybook/check@1', findings, summary }, null, 2)}\n`;
}

const told = (message: Finding['message']) => ({ message: sayText(message) });

/** A range as the language server protocol counts: lines and UTF-16 units from zero. */
export function place({ file, document, span }: Located) {
  return {
    file: safe(file),
    range: { start: document.positionAt(span.offset), end: document.positionAt(Math.max(span.end, span.offset)) },
  };
}

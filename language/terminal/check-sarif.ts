import type { Finding } from '../rules/finding.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule, Severity } from '../rules/rule.ts';
import { safe, sayText } from '../view/text.ts';
import type { OpenBook } from './book.ts';
import type { Checked } from './check.ts';
import { type Located, relatedOf } from './places.ts';
import { version } from './version.ts';

/** SARIF knows no information that is to be heeded: `note` is its lightest kind. */
const levels: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'note' };

/** Findings in the Static Analysis Results Interchange Format 2.1.0 (OASIS, 2020), accepted ones as suppressed. */
export function checkSarif(book: OpenBook, checked: readonly Checked[]): string {
  const found = checked.flatMap(({ document, findings }) => findings.map((finding) => ({ document, finding })));
  const named = [...new Set(found.map(({ finding }) => finding.rule))].sort();
  const results = found.map(({ document, finding }) => {
    const at = { file: book.nameOf(document.uri.toString()), document: document.textDocument, span: finding.span };
    return {
      ruleId: finding.rule,
      ruleIndex: named.indexOf(finding.rule),
      level: levels[finding.severity],
      message: { text: safe(sayText(finding.message)) },
      locations: [locationOf(at)],
      ...related(relatedOf(book, document, finding)),
      ...(finding.accepted === undefined
        ? {}
        : { suppressions: [{ kind: 'inSource', justification: safe(finding.accepted) }] }),
    };
  });
  const log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'laybook', semanticVersion: version, rules: named.map(ruleOf) } },
        columnKind: 'utf16CodeUnits',
        results,
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

function ruleOf(name: string) {
  const rule = (rules as readonly Rule[]).find((each) => each.name === name);
  if (rule === undefined) return { id: name };
  return {
    id: name,
    shortDescription: { text: rule.title },
    help: { text: `laybook explain ${name}` },
    defaultConfiguration: { level: levels[rule.severity] },
  };
}

function related(places: readonly (Located & { readonly message: Finding['message'] })[]) {
  if (places.length === 0) return {};
  return {
    relatedLocations: places.map((place, id) => ({
      id,
      ...locationOf(place),
      message: { text: safe(sayText(place.message)) },
    })),
  };
}

/** Lines and columns from 1, the end column behind the last character; a file by its path from where the command runs. */
function locationOf({ file, document, span }: Located) {
  const start = document.positionAt(span.offset);
  const end = document.positionAt(Math.max(span.end, span.offset));
  return {
    physicalLocation: {
      artifactLocation: { uri: file.split(/[\\/]/).map(encodeURIComponent).join('/') },
      region: {
        startLine: start.line + 1,
        startColumn: start.character + 1,
        endLine: end.line + 1,
        endColumn: end.character + 1,
      },
    },
  };
}

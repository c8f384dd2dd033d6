import type { LangiumDocument } from 'langium';
import { isText } from '../../calc/figure/figure.ts';
import type { Finding } from '../rules/finding.ts';
import { code, plain } from './hover/markdown.ts';
import { markdownTable } from './markdown-table.ts';
import { type Style, say, sayText, show } from './text.ts';
import { translated } from './translation.ts';

/** The finding of a rule that lies nearest to a line, of those in the file. */
export function findingNear(
  document: LangiumDocument,
  findings: readonly Finding[],
  rule: string,
  line: number,
): Finding | undefined {
  const away = ({ span }: Finding): number => Math.abs(document.textDocument.positionAt(span.offset).line - line);
  return findings.filter((finding) => finding.rule === rule).sort((a, b) => away(a) - away(b))[0];
}

/** A rule's page with the case on top: what was found where, and the figures of it. */
export function pageWithCase(page: string, document: LangiumDocument, finding: Finding, style: Style): string {
  const [heading = '', ...rest] = page.split('\n');
  return [heading, '', caseText(document, finding, style), ...rest].join('\n');
}

function caseText(document: LangiumDocument, finding: Finding, style: Style): string {
  const { textDocument, uri } = document;
  const start = textDocument.positionAt(finding.span.offset);
  const file = uri.path.slice(uri.path.lastIndexOf('/') + 1);
  const end = textDocument.positionAt(finding.span.end);
  const line = textDocument.getText({
    start: { line: start.line, character: 0 },
    end: { line: start.line + 1, character: 0 },
  });
  const rows = Object.entries(finding.message.figures)
    .filter(([, value]) => !isText(value))
    .map(([name, value]) => [translated(name.replace(/_/g, ' ')), show(value, style)]);
  const lines = { file: plain(file), first: String(start.line + 1), last: String(end.line + 1) };
  const where =
    end.line > start.line ? say('{file}, line {first} to {last}', lines) : say('{file}, line {first}', lines);
  const parts = [
    `## ${say('Here')}`,
    `${where}: ${plain(sentence(sayText(finding.message, style)))}`,
    code(line.trim()),
    finding.accepted === undefined ? '' : say('The line accepts it: {reason}', { reason: plain(finding.accepted) }),
    rows.length === 0 ? '' : markdownTable({ head: [say('figure'), say('value')], right: [], rows }),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

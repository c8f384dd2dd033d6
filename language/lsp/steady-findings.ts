import type { LangiumDocument } from 'langium';
import { shiftedFixes, shiftedSpan } from '../lower/shifted.ts';
import type { Finding } from '../rules/finding.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule } from '../rules/rule.ts';

interface Told {
  readonly text: string;
  readonly findings: readonly Finding[];
}

/** A line in which one of these finds something is not finished: what else is found of it, and because of it, is not yet so. */
const unfinished: ReadonlySet<string> = new Set([
  'name/unknown',
  ...(rules as readonly Rule[]).filter(({ on }) => on === 'reading').map(({ name }) => name),
]);

const told = new WeakMap<LangiumDocument, Told>();

/**
 * What the editor is told while somebody types: as long as the line that is typed cannot be read, it is told of that alone, and of
 * the other lines what was found before. So nothing comes and goes elsewhere with every key. As soon as the line can be read, or
 * another one is edited, all is told as it is.
 */
export function steadyFindings(document: LangiumDocument, fresh: readonly Finding[]): readonly Finding[] {
  const text = document.textDocument.getText();
  const before = told.get(document);
  const findings = before === undefined ? fresh : whileTyped(before, text, fresh);
  told.set(document, { text, findings });
  return findings;
}

function whileTyped(before: Told, text: string, fresh: readonly Finding[]): readonly Finding[] {
  const line = typedLine(before.text, text);
  if (line === undefined) return fresh;
  const isOn = ({ span }: Finding, { start, end }: Line): boolean => span.offset <= end && span.end >= start;
  const open = fresh.filter((finding) => unfinished.has(finding.rule) && isOn(finding, line.now));
  if (open.length === 0) return fresh;
  const kept = before.findings
    .filter((finding) => !isOn(finding, line.before))
    .map((finding) => moved(finding, finding.span.offset > line.before.end ? text.length - before.text.length : 0));
  return [...kept, ...open].sort((a, b) => a.span.offset - b.span.offset);
}

interface Line {
  readonly start: number;
  readonly end: number;
}

/** The one line in which two texts differ; undefined where they are the same or differ in more than a line. */
function typedLine(before: string, now: string): { readonly before: Line; readonly now: Line } | undefined {
  if (before === now) return undefined;
  const shorter = Math.min(before.length, now.length);
  let head = 0;
  while (head < shorter && before[head] === now[head]) head++;
  let tail = 0;
  while (tail < shorter - head && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  const lineEnd = /[\r\n]/;
  if (lineEnd.test(before.slice(head, before.length - tail)) || lineEnd.test(now.slice(head, now.length - tail)))
    return undefined;
  return { before: lineAround(before, head), now: lineAround(now, head) };
}

function lineAround(text: string, offset: number): Line {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const end = /[\r\n]/.exec(text.slice(offset))?.index;
  return { start, end: end === undefined ? text.length : offset + end };
}

function moved(finding: Finding, by: number): Finding {
  if (by === 0) return finding;
  return {
    ...finding,
    span: shiftedSpan(finding.span, by),
    fixes: shiftedFixes(finding.fixes, by),
    related: finding.related.map((each) =>
      each.span === undefined ? each : { ...each, span: shiftedSpan(each.span, by) },
    ),
  };
}

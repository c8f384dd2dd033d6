import type { Report } from '../../../calc/report.ts';
import { plain } from '../hover/markdown.ts';
import { markdownTable } from '../markdown-table.ts';
import { translated } from '../translation.ts';
import { caution, type Section, sectionsOf, type Telling, titleOf } from './index.ts';

/** A report as Markdown: for a wiki, a merge request, or a page in the editor. `findings`: a sentence on what stands open; empty if nothing does. */
export function reportMarkdown(report: Report, telling: Telling, findings: string): string {
  const sections = sectionsOf(report, telling).map(sectionOf);
  return `${[`# ${plain(titleOf(report))}`, ...sections, ...(findings === '' ? [] : [plain(findings)]), translated(caution)].join('\n\n')}\n`;
}

function sectionOf({ title, lead, table, lines }: Section): string {
  const parts = [headingOf(title), lead];
  if (lines !== undefined && lines.length > 0) parts.push(lines.map((line) => `- ${plain(line)}`).join('\n'));
  if (table !== undefined) parts.push(markdownTable(table));
  return parts.join('\n\n');
}

export const headingOf = (title: string): string => `## ${title}`;

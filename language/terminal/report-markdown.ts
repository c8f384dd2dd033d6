import type { EntryKey, Place } from '../../calc/model/index.ts';
import type { Report } from '../../calc/report.ts';
import type { Caution } from '../view/cautions.ts';
import { plain } from '../view/hover/markdown.ts';
import { markdownTable } from '../view/markdown-table.ts';
import { caution, type Section, sectionsOf, titleOf } from '../view/report/index.ts';
import { plainStyle } from '../view/text.ts';
import { type Located, lineAndColumn } from './places.ts';

/** What is told of a recipe, and where its places stand. */
export interface Page {
  readonly report: Report;
  readonly recipe: EntryKey;
  locate(at: Place): Located | undefined;
  readonly cautions: readonly Caution[];
  /** a sentence on what stands open; empty if nothing does */
  readonly findings: string;
}

/** A report as Markdown, for a wiki or a merge request. */
export function reportMarkdown({ report, recipe, locate, cautions, findings }: Page): string {
  const telling = {
    style: plainStyle,
    recipe,
    cautions,
    place: (at: Place) => {
      const located = locate(at);
      return located === undefined ? undefined : lineAndColumn(located).replace(/:\d+$/, '');
    },
  };
  const sections = sectionsOf(report, telling).map(sectionOf);
  return `${[`# ${plain(titleOf(report))}`, ...sections, ...(findings === '' ? [] : [plain(findings)]), caution].join('\n\n')}\n`;
}

function sectionOf({ title, lead, table, lines }: Section): string {
  const parts = [`## ${title}`, lead];
  if (lines !== undefined && lines.length > 0) parts.push(lines.map((line) => `- ${plain(line)}`).join('\n'));
  if (table !== undefined) parts.push(markdownTable(table));
  return parts.join('\n\n');
}

import type { Report } from '../../calc/report.ts';
import { caution, type Section, sectionsOf, type Table, type Telling, titleOf } from '../view/report/index.ts';
import { safe } from '../view/text.ts';
import { translated } from '../view/translation.ts';
import type { Screen } from './screen.ts';
import { padded, widthOf, wrapped } from './width.ts';

const widest = 100;
/** a date fits */
const narrowest = 10;
const gap = '  ';

/** A report for a terminal of 100 columns. `findings`: a sentence on what stands open; empty if nothing does. */
export function reportText(report: Report, telling: Telling, findings: string, screen: Screen): string {
  const foot = [...(findings === '' ? [] : [findings]), translated(caution)].flatMap((text) =>
    wrapped(safe(text), widest),
  );
  return `${sectionsText(titleOf(report), sectionsOf(report, telling), screen)}\n${foot.join('\n')}\n`;
}

/** A title, and below it section by section. */
export function sectionsText(title: string, sections: readonly Section[], { paint }: Screen): string {
  const told = sections.map((section) => `${paint('bold', safe(section.title))}\n${bodyOf(section, paint)}`);
  return `${[paint(['bold', 'underline'], safe(title)), ...told].join('\n\n')}\n`;
}

function bodyOf({ lead, table, lines }: Section, paint: Screen['paint']): string {
  const told = [
    ...wrapped(lead, widest).map((line) => paint('dim', line)),
    ...(lines ?? []).flatMap((line) => wrapped(safe(line), widest)),
  ];
  return [...told, ...(table === undefined ? [] : tableLines(table, paint))].join('\n');
}

/** A table whose columns are as wide as they need to be; where that is too much, the widest ones are broken into lines. */
export function tableLines({ head, right, rows }: Table, paint: Screen['paint']): string[] {
  const cells = rows.map((row) => row.map(safe));
  const widths = head.map((title, i) => Math.max(widthOf(title), ...cells.map((row) => widthOf(row[i] ?? ''))));
  const room = widest - gap.length * (head.length - 1);
  for (let over = total(widths) - room; over > 0; over = total(widths) - room) {
    const most = widths.indexOf(Math.max(...widths.map((width, i) => (right.includes(i) ? 0 : width))));
    const width = widths[most] ?? 0;
    if (width <= narrowest) break;
    widths[most] = Math.max(narrowest, width - over, secondWidest(widths, most, right));
    if (widths[most] === width) widths[most] = width - 1;
  }
  const line = (row: readonly string[]): string[] => {
    const broken = row.map((cell, i) => brokenTo(cell, widths[i] ?? 0));
    const height = Math.max(1, ...broken.map((parts) => parts.length));
    return Array.from({ length: height }, (_, k) =>
      broken
        .map((parts, i) => padded(parts[k] ?? '', widths[i] ?? 0, right.includes(i)))
        .join(gap)
        .trimEnd(),
    );
  };
  return [...line(head).map((text) => paint('underline', text)), ...cells.flatMap(line)];
}

const total = (widths: readonly number[]): number => widths.reduce((sum, width) => sum + width, 0);

const secondWidest = (widths: readonly number[], most: number, right: readonly number[]): number =>
  Math.max(0, ...widths.map((width, i) => (i === most || right.includes(i) ? 0 : width)));

/** A cell on lines of a width; its indent is kept, and a word that is too long is cut. */
function brokenTo(cell: string, width: number): string[] {
  if (widthOf(cell) <= width) return [cell];
  const indent = /^ */.exec(cell)?.[0] ?? '';
  return wrapped(cell, width - indent.length).flatMap((line, i) =>
    cut(line, width - indent.length).map((part) => `${i === 0 || indent !== '' ? indent : ''}${part}`),
  );
}

function cut(text: string, width: number): string[] {
  const parts: string[] = [];
  let part = '';
  for (const character of text) {
    if (part !== '' && widthOf(part + character) > width) {
      parts.push(part);
      part = '';
    }
    part += character;
  }
  return [...parts, part];
}

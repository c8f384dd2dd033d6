import { plain } from './hover/markdown.ts';
import type { Table } from './report/index.ts';

/** A table as Markdown; what stands in its cells means nothing to the page. */
export function markdownTable({ head, right, rows }: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(head.map(plain)),
    line(head.map((_, i) => (right.includes(i) ? '--:' : '---'))),
    ...rows.map((row) => line(row.map((cell) => plain(cell.trim())))),
  ].join('\n');
}

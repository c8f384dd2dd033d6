import type { TextDocument } from 'langium';
import type { Span } from '../lower/index.ts';
import type { Screen, Style } from './screen.ts';
import { cellsOfLine } from './width.ts';

/** Longer lines are cut on both sides of what is spoken of. */
const widest = 110;
const before = 30;

/** The source line of a place, the place underlined. Two lines, indented. */
export function snippet(document: TextDocument, span: Span, style: Style, screen: Screen): string {
  const start = document.positionAt(span.offset);
  const end = document.positionAt(Math.max(span.end, span.offset));
  const line = lineAt(document, start.line, start.character);
  const from = start.character - line.skipped;
  const to = Math.max(
    from + 1,
    end.line === start.line ? Math.min(end.character - line.skipped, line.text.length) : line.text.length,
  );
  const { text, at } = cellsOfLine(line.text);
  const first = at[from] ?? at.at(-1) ?? 0;
  const last = at[to] ?? Math.max(first + 1, at.at(-1) ?? 0);
  const gutter = String(start.line + 1);
  const bar = screen.paint('dim', '|');
  const marks = screen.paint(style, '^'.repeat(Math.max(1, last - first)));
  return [
    `  ${screen.paint('dim', gutter)} ${bar} ${line.skipped > 0 ? '...' : ''}${text.trimEnd()}${line.more ? '...' : ''}`,
    `  ${' '.repeat(gutter.length)} ${bar} ${' '.repeat(first + (line.skipped > 0 ? 3 : 0))}${marks}`,
  ].join('\n');
}

/** A line without its end, or the stretch of a long one around a character. */
function lineAt(
  document: TextDocument,
  line: number,
  character: number,
): { text: string; skipped: number; more: boolean } {
  const whole = document
    .getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } })
    .replace(/[\r\n]+$/, '');
  if (whole.length <= widest) return { text: whole, skipped: 0, more: false };
  let skipped = Math.max(0, Math.min(character - before, whole.length - widest));
  // never between the two halves of a character
  if (/[\udc00-\udfff]/.test(whole[skipped] ?? '')) skipped++;
  let end = Math.min(whole.length, skipped + widest);
  if (/[\udc00-\udfff]/.test(whole[end] ?? '')) end--;
  return { text: whole.slice(skipped, end), skipped, more: end < whole.length };
}

import { say } from '../text.ts';
import type { HoverBook } from './book.ts';

/** The command of the editor that a link may run; it puts its text on the clipboard. */
export const copyCommand = 'laybook.copyText';

/** A link that copies figures, a row a line with tabs between, as a sheet takes them; empty where the editor runs no links. */
export function copyLink(rows: readonly (readonly string[])[], book: HoverBook): string {
  if (!book.commandLinks || rows.length === 0) return '';
  const text = rows.map((row) => row.map((cell) => cell.replace(/[\t\r\n]+/g, ' ').trim()).join('\t')).join('\n');
  return `[${say('Copy these figures')}](command:${copyCommand}?${linkEncoded(JSON.stringify([text]))})`;
}

/** Nothing in it ends the link: brackets and quotes are encoded too. */
export const linkEncoded = (text: string): string =>
  encodeURIComponent(text).replace(/[!'()*]/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);

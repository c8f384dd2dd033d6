import type { Reason } from '../../../calc/figure/figure.ts';
import type { Place } from '../../../calc/model/index.ts';
import { type Depth, type Said, saidReasons } from '../reasons.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import type { HoverBook } from './book.ts';
import { plain } from './markdown.ts';

/** A hover is read, not studied: so much of a chain of reasons it tells. */
const readable: Depth = { deepest: 4, most: 14 };

/** A chain of reasons as a nested list; each statement with its source and its place. */
export function chainText(reasons: readonly Reason[], book: HoverBook, depth: Depth = readable): string {
  const lines = (list: readonly Said[], indent: string): string[] =>
    list.flatMap(({ words, source, at, reasons: under }) => [
      `${indent}- ${source === undefined ? plain(words) : say('{words}; source: {source}', { words: plain(words), source: plain(translated(source)) })}${at === undefined ? '' : placeLink(at, book)}`,
      ...lines(under, `${indent}  `),
    ]);
  return lines(saidReasons(reasons, book.style(), depth), '').join('\n');
}

/** ` ([sled_deck.layup:14](...))`; empty where the place stands nowhere. */
export function placeLink(at: Place, book: HoverBook): string {
  const found = book.textAt(at);
  if (found === undefined) return '';
  return found.link === '' ? ` (${plain(found.name)})` : ` ([${plain(found.name)}](${found.link}))`;
}

/** What is missing, as a list under one sentence; empty where nothing is. */
export function missingText(because: readonly Reason[], book: HoverBook): string {
  if (because.length === 0) return '';
  return `${say('Not all of it can be told, because:')}\n\n${chainText(because, book, { deepest: 1, most: 8 })}`;
}

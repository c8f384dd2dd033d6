import type { LangiumDocument } from 'langium';
import { exampleOf } from '../../analysis/examples.ts';
import { readingProblems } from '../../grammar/messages.ts';
import type { Lowered } from '../../lower/index.ts';
import type { CodeLine } from './code-lines.ts';
import type { Trust } from './kept-lines.ts';

/** Rules that say that a line is not written to its end, or that it says what nobody means: `20 m` on the way to `20 mm`. */
export const unread = /^(line|unit)\//;

/** How far each line of a text can be trusted. */
export interface TrustOfLines {
  of(line: CodeLine): { readonly trust: Trust; readonly unread: boolean };
}

/** From the text of each entry: lines that cannot be read, and names that there are not. Entries are told apart by their heads, as the tree may have lost one. */
export function trustOf(
  document: LangiumDocument,
  lowered: readonly Lowered[],
  lines: readonly CodeLine[],
): TrustOfLines {
  const unreadAt = [
    ...readingProblems(document.textDocument.getText(), document.parseResult, exampleOf).map(({ offset }) => offset),
    ...lowered.flatMap(({ problems, accepts }) =>
      problems
        .filter(({ rule }) => unread.test(rule) && !accepts.some((each) => each.rule === rule))
        .map(({ span }) => span.offset),
    ),
  ];
  const missingAt = document.references.flatMap((reference) =>
    reference.error !== undefined && reference.$refNode?.astNode.$type !== 'WordArg'
      ? [reference.$refNode?.offset ?? 0]
      : [],
  );
  const torn = new Set<number>();
  const waiting = new Set<number>();
  const unreadLines = new Set<CodeLine>();
  const heads = lines.filter(({ opensEntry }) => opensEntry).map(({ start }) => start);
  const entryAt = (offset: number): number => lastAtOrBefore(heads, offset);
  const starts = lines.map(({ start }) => start);
  for (const offset of unreadAt) {
    const line = lines[lastAtOrBefore(starts, offset)];
    if (line !== undefined) unreadLines.add(line);
    torn.add(entryAt(offset));
  }
  for (const offset of missingAt) waiting.add(entryAt(offset));
  return {
    of(line) {
      const entry = entryAt(line.start);
      return {
        trust: torn.has(entry) ? 'torn' : waiting.has(entry) ? 'waiting' : 'whole',
        unread: unreadLines.has(line),
      };
    },
  };
}

/** Index of the last number that is not above a limit, in rising numbers; -1 where all are. */
function lastAtOrBefore(numbers: readonly number[], limit: number): number {
  let low = 0;
  let high = numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((numbers[middle] as number) <= limit) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

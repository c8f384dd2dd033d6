import type { LangiumDocument } from 'langium';
import { exampleOf } from '../../analysis/examples.ts';
import { readingProblems } from '../../grammar/messages.ts';
import { type Lowered, spanOf } from '../../lower/index.ts';
import { unread } from '../kept/trust.ts';
import { say } from '../text.ts';

export interface BrokenLine {
  readonly words: string;
  /** from zero */
  readonly line: number;
}

/**
 * The first line of an entry that is not written to its end, or that names what there is not: while somebody types, perhaps.
 * What is told of the entry may lack that line.
 */
export function brokenLine(document: LangiumDocument, lowered: Lowered): BrokenLine | undefined {
  const { textDocument, references } = document;
  const { start, end } = reachOf(document, lowered);
  const { problems, accepts } = lowered;
  const offsets = [
    ...readingProblems(textDocument.getText(), document.parseResult, exampleOf).map(({ offset }) => offset),
    ...problems
      .filter(({ rule }) => unread.test(rule) && !accepts.some((accept) => accept.rule === rule))
      .map(({ span }) => span.offset),
    ...references.flatMap(({ error, $refNode }) =>
      error !== undefined && $refNode !== undefined && $refNode.astNode.$type !== 'WordArg' ? [$refNode.offset] : [],
    ),
  ];
  const [first] = offsets.filter((offset) => offset >= start && offset <= end).sort((a, b) => a - b);
  if (first === undefined) return undefined;
  const { line } = textDocument.positionAt(first);
  return { words: say('Line {line} cannot be taken in yet.', { line: String(line + 1) }), line };
}

/** From the head of an entry to that of the next: a line that cannot be read may lie behind what the tree holds of it. */
function reachOf(document: LangiumDocument, lowered: Lowered): { readonly start: number; readonly end: number } {
  const start = spanOf(lowered.places, '')?.offset ?? 0;
  const { entries } = document.parseResult.value as unknown as {
    readonly entries: readonly { readonly $cstNode?: { readonly offset: number } }[];
  };
  const next = entries.map(({ $cstNode }) => $cstNode?.offset ?? 0).find((offset) => offset > start);
  return { start, end: next === undefined ? Number.POSITIVE_INFINITY : next - 1 };
}

import type { AstNode } from 'langium';
import type { Accepted, Remarks } from '../../calc/model/index.ts';
import type { AcceptClause, AcceptRemark, Clause, Note, Remark } from '../grammar/generated/ast.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan } from './places.ts';

function hasRemark(remarks: readonly (Remark | Clause)[]): boolean {
  for (const remark of remarks) if (isRemark(remark)) return true;
  return false;
}

/** A note, a source or an accepted rule: it says nothing of what is built. */
export function isRemark({ $type }: Remark | Clause): boolean {
  // every clause of every line is asked: a comparison costs less than a lookup
  return (
    $type === 'NoteRemark' ||
    $type === 'NoteClause' ||
    $type === 'SourceRemark' ||
    $type === 'SourceClause' ||
    $type === 'AcceptRemark' ||
    $type === 'AcceptClause'
  );
}

const none: Remarks & { source?: string } = {};

/** Notes, accepted rules and the source of a line; `path` is the line's own. */
export function lowerRemarks(
  low: Lowering,
  path: string,
  remarks: readonly (Remark | Clause)[],
  notes: readonly Note[] = [],
  block = false,
): Remarks & { source?: string } {
  // most lines have clauses alone
  if (notes.length === 0 && !hasRemark(remarks)) return none;
  const texts: string[] = [];
  const accepts: Accepted[] = [];
  let source: string | undefined;
  for (const remark of remarks) {
    if (remark.$type === 'NoteRemark' || remark.$type === 'NoteClause')
      keepText(low, remark, remark.text, 'a note', texts);
    else if (remark.$type === 'SourceRemark' || remark.$type === 'SourceClause') {
      const found: string[] = [];
      keepText(low, remark, remark.text, 'a source', found);
      source = found[0];
    } else if (remark.$type === 'AcceptRemark' || remark.$type === 'AcceptClause') {
      const accepted = lowerAccept(low, path, remark, block);
      if (accepted !== undefined) accepts.push(accepted);
    }
  }
  for (const note of notes) keepText(low, note, note.text, 'a note', texts);
  return {
    ...(texts.length > 0 ? { notes: texts } : {}),
    ...(accepts.length > 0 ? { accepts } : {}),
    ...(source === undefined ? {} : { source }),
  };
}

/** A text with its quotes; one that is not closed is reported on its line. */
export function keepText(low: Lowering, node: AstNode, value: string | undefined, what: string, into: string[]): void {
  if (value === undefined) {
    low.problem(
      'line/not-understood',
      node,
      what === 'a note'
        ? 'a note stands in quotes: note "Seam to the left."'
        : 'a source stands in quotes: source "data sheet, 2026-03"',
    );
    return;
  }
  reportOpenText(low, node);
  into.push(value);
}

export function reportOpenText(low: Lowering, node: AstNode | undefined): void {
  const span = nodeSpan(node);
  const typed = node?.$cstNode?.root.fullText.slice(span?.offset, span?.end) ?? '';
  const quotes = typed.split('"').length - 1;
  if (span === undefined || quotes % 2 === 0) return;
  low.problem('line/not-understood', span, 'the text is not closed: a " is missing at its end', [
    { title: 'Close the text', edits: [{ offset: span.end, end: span.end, text: '"' }] },
  ]);
}

function lowerAccept(
  low: Lowering,
  line: string,
  node: AcceptRemark | AcceptClause,
  block: boolean,
): Accepted | undefined {
  const span = low.spanFor(node);
  if (node.rule === undefined || span === undefined) {
    low.problem(
      'line/not-understood',
      node,
      'accept names a rule and says why: accept bag/few-pleats "The tool is flat."',
    );
    return undefined;
  }
  reportOpenText(low, node);
  const reason = node.reason ?? '';
  if (reason === '')
    low.problem('line/not-understood', node, 'accept says why, in quotes: the build sheet lists the reason');
  // a recipe is read once for each of its sizes
  if (!low.accepts.some((accept) => accept.span.offset === span.offset))
    low.accepts.push({ rule: node.rule, reason, line, block, span });
  return { rule: node.rule, reason, path: line };
}

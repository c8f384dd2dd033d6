import type { Fix, Lowered, Problem, Span } from './index.ts';

/** A span of a text that has moved as a whole. */
export const shiftedSpan = (span: Span, by: number): Span => ({ offset: span.offset + by, end: span.end + by });

export const shiftedFixes = (fixes: readonly Fix[], by: number): readonly Fix[] =>
  fixes.map((fix) => ({ ...fix, edits: fix.edits.map((edit) => ({ ...edit, ...shiftedSpan(edit, by) })) }));

/** An entry whose text stands further up or down than when it was lowered. */
export function shifted(lowered: Lowered, by: number): Lowered {
  if (by === 0) return lowered;
  return {
    ...lowered,
    source: shiftedSpan(lowered.source, by),
    places: new Map([...lowered.places].map(([path, span]) => [path, shiftedSpan(span, by)])),
    problems: lowered.problems.map((problem) => shiftedProblem(problem, by)),
    accepts: lowered.accepts.map((accept) => ({ ...accept, span: shiftedSpan(accept.span, by) })),
  };
}

function shiftedProblem(problem: Problem, by: number): Problem {
  return {
    ...problem,
    span: shiftedSpan(problem.span, by),
    ...(problem.fixes === undefined ? {} : { fixes: shiftedFixes(problem.fixes, by) }),
    ...(problem.related === undefined
      ? {}
      : { related: problem.related.map((each) => ({ ...each, span: shiftedSpan(each.span, by) })) }),
  };
}

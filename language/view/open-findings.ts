import type { LangiumDocument } from 'langium';
import type { Span } from '../lower/index.ts';

/** How many findings stand open in a stretch of a text, as the editor was told last; undefined before it was told. */
export interface OpenFindings {
  readonly errors: number;
  readonly others: number;
}

export function openFindings(
  { diagnostics, textDocument }: LangiumDocument,
  { offset, end }: Span,
): OpenFindings | undefined {
  if (diagnostics === undefined) return undefined;
  const inside = diagnostics.filter(({ range }) => {
    const at = textDocument.offsetAt(range.start);
    return at >= offset && at <= end;
  });
  const errors = inside.filter(({ severity }) => severity === 1).length;
  return { errors, others: inside.length - errors };
}

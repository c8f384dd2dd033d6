import { type LangiumDocument, type TextDocument, URI } from 'langium';
import type { Span } from '../lower/index.ts';
import type { Finding } from '../rules/finding.ts';
import type { OpenBook } from './book.ts';

/** A stretch of one file of the book or of the stock library. */
export interface Located {
  readonly file: string;
  readonly document: TextDocument;
  readonly span: Span;
}

/** Where the places of a finding stand that it names besides its own; those that stand nowhere are left out. */
export function relatedOf(
  book: OpenBook,
  document: LangiumDocument,
  finding: Finding,
): (Located & { readonly message: Finding['message'] })[] {
  return finding.related.flatMap(({ at, span, message }) => {
    const own = span === undefined ? undefined : { uri: document.uri.toString(), span };
    const found = own ?? (at === undefined ? undefined : book.services.analysis.locate(at, document));
    const located = found === undefined ? undefined : locatedAt(book, found.uri, found.span);
    return located === undefined ? [] : [{ ...located, message }];
  });
}

export function locatedAt(book: OpenBook, uri: string, span: Span): Located | undefined {
  const document = book.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
  return document === undefined ? undefined : { file: book.nameOf(uri), document: document.textDocument, span };
}

/** `materials.layup:12:3`: line and column as people count them, columns in characters. */
export function lineAndColumn({ file, document, span }: Located): string {
  const { line, character } = document.positionAt(span.offset);
  const before = document.getText({ start: { line, character: 0 }, end: { line, character } });
  return `${file}:${line + 1}:${[...before].length + 1}`;
}

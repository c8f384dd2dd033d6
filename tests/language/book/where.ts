import { type AstNode, AstUtils } from 'langium';
import { addressOf, nameOf, openBook, type TestBook } from '../../harness/book.ts';
import { readMarks } from '../../harness/marks.ts';

/** A book whose files carry marks; the one with the cursor is where something is asked. */
export async function openMarked(files: Readonly<Record<string, string>>, options: { open?: readonly string[] } = {}) {
  const marked = Object.fromEntries(Object.entries(files).map(([name, text]) => [name, readMarks(text)]));
  const book = await openBook(
    Object.fromEntries(Object.entries(marked).map(([name, { text }]) => [name, text])),
    options,
  );
  const asked = Object.entries(marked).find(([, { cursors }]) => cursors.length > 0);
  if (asked === undefined) throw new Error('no file has a cursor');
  const [name, { cursors }] = asked;
  const document = book.document(name);
  const params = {
    textDocument: { uri: addressOf(name).toString() },
    position: document.textDocument.positionAt(cursors[0] as number),
  };
  /** the marked ranges of all files, as `file:line:character-character` */
  const expected = Object.entries(marked).flatMap(([file, { text, ranges }]) =>
    ranges.map(({ start, end }) => placeIn(text, file, start, end)),
  );
  return { book, document, params, expected: expected.sort() };
}

function placeIn(text: string, file: string, start: number, end: number): string {
  const line = text.slice(0, start).split('\n').length - 1;
  const column = start - (text.lastIndexOf('\n', start - 1) + 1);
  return `${file}:${line}:${column}-${column + end - start}`;
}

interface Span {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

export function place(uri: string, { start, end }: Span): string {
  return `${nameOf(uri)}:${start.line}:${start.character}-${end.character}`;
}

/** All references of a document with this text, and what each means: `file type name`, or nothing. */
export function meanings(book: TestBook, name: string, text: string): (string | undefined)[] {
  const found: (string | undefined)[] = [];
  for (const node of AstUtils.streamAst(book.document(name).parseResult.value)) {
    for (const { reference } of AstUtils.streamReferences(node)) {
      if (reference.$refText === text) found.push('ref' in reference ? told(reference.ref) : undefined);
    }
  }
  return found;
}

/** What a node is, as `file type name`; a node that an edit has replaced says so. */
export function told(node: AstNode | undefined): string | undefined {
  if (node === undefined) return undefined;
  const document = AstUtils.getDocument(node);
  const stale = AstUtils.findRootNode(node) !== document.parseResult.value ? 'replaced ' : '';
  return `${stale}${nameOf(document.uri)} ${node.$type} ${(node as { name?: string }).name}`;
}

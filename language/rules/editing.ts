import type { Words } from '../../calc/figure/figure.ts';
import { indentAt } from '../grammar/braces.ts';
import type { Fix, Places, Span, TextEdit } from '../lower/index.ts';
import { withComma } from '../lower/places.ts';

/** How the lines of a text end. */
export const lineEndOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

/** Takes a clause away together with the comma before it. */
export function withoutClause(title: Words, span: Span, source: string): Fix {
  return { title, edits: [{ ...withComma(span, source), text: '' }] };
}

/** Edits for quick fixes, by the path of a line. Undefined where the line does not stand in this text. */
export class Editing {
  readonly text: string;
  private readonly places: Places;

  constructor(text: string, places: Places) {
    this.text = text;
    this.places = places;
  }

  span(path: string): Span | undefined {
    return this.places.get(path);
  }

  /** Replaces what stands at a path. */
  replace(title: Words, path: string, text: string): Fix | undefined {
    const span = this.places.get(path);
    return span === undefined ? undefined : { title, edits: [{ offset: span.offset, end: span.end, text }] };
  }

  /** Adds a clause at the end of the line of a path: `, wrap onto body by 25 mm`. */
  addClause(title: Words, path: string, clause: string): Fix | undefined {
    const span = this.places.get(path);
    return span === undefined
      ? undefined
      : { title, edits: [{ offset: span.end, end: span.end, text: `, ${clause}` }] };
  }

  /** Takes a clause away together with the comma before it. */
  removeClause(title: Words, path: string): Fix | undefined {
    const span = this.places.get(path);
    if (span === undefined) return undefined;
    return withoutClause(title, span, this.text);
  }

  /** A line of its own before the line of a path, indented alike. */
  lineBefore(title: Words, path: string, line: string): Fix | undefined {
    const span = this.places.get(path);
    if (span === undefined) return undefined;
    return {
      title,
      edits: [{ offset: span.offset, end: span.offset, text: `${line}${this.lineEnd}${this.indent(span)}` }],
    };
  }

  /** A line of its own behind the line of a path; behind its comment, should one follow. */
  lineAfter(title: Words, path: string, line: string): Fix | undefined {
    const span = this.places.get(path);
    if (span === undefined) return undefined;
    const end = this.endOfLine(span.end);
    return { title, edits: [{ offset: end, end, text: `${this.lineEnd}${this.indent(span)}${line}` }] };
  }

  /** The first line inside the block of a path. */
  firstLineIn(title: Words, path: string, line: string): Fix | undefined {
    const span = this.places.get(path);
    const brace = span === undefined ? -1 : this.text.indexOf('{', span.offset);
    if (span === undefined || brace < 0) return undefined;
    const end = this.endOfLine(brace + 1);
    return { title, edits: [{ offset: end, end, text: `${this.lineEnd}${this.indent(span)}  ${line}` }] };
  }

  /** Moves the whole line of a path before the line of another. */
  moveBefore(title: Words, path: string, before: string): Fix | undefined {
    const from = this.wholeLine(path);
    const to = this.wholeLine(before);
    if (from === undefined || to === undefined || from.offset === to.offset) return undefined;
    return {
      title,
      edits: [
        { offset: to.offset, end: to.offset, text: this.text.slice(from.offset, from.end) },
        { offset: from.offset, end: from.end, text: '' },
      ],
    };
  }

  /** Takes the whole line of a path away. */
  removeLine(title: Words, path: string): Fix | undefined {
    const line = this.wholeLine(path);
    return line === undefined ? undefined : { title, edits: [{ ...line, text: '' }] };
  }

  together(title: Words, ...fixes: readonly (Fix | undefined)[]): Fix | undefined {
    const edits: TextEdit[] = fixes.flatMap((fix) => fix?.edits ?? []);
    return edits.length === 0 ? undefined : { title, edits };
  }

  /** From the first column to behind the line end; a block counts with all its lines. */
  private wholeLine(path: string): Span | undefined {
    const span = this.places.get(path);
    if (span === undefined) return undefined;
    let offset = span.offset;
    while (offset > 0 && this.text[offset - 1] !== '\n') offset--;
    let end = this.endOfLine(this.endOfBlock(span));
    if (this.text[end] === '\r') end++;
    if (this.text[end] === '\n') end++;
    return { offset, end };
  }

  /** A head is placed without its block: behind it, the block ends at the brace that closes it. */
  private endOfBlock(span: Span): number {
    const brace = /^[ \t]*\{/.exec(this.text.slice(span.end, span.end + 80));
    if (brace === null) return span.end;
    let depth = 0;
    for (let i = span.end; i < this.text.length; i++) {
      if (this.text[i] === '{') depth++;
      else if (this.text[i] === '}' && --depth === 0) return i + 1;
    }
    return span.end;
  }

  private endOfLine(from: number): number {
    let end = from;
    while (end < this.text.length && this.text[end] !== '\n' && this.text[end] !== '\r') end++;
    return end;
  }

  private indent(span: Span): string {
    let start = span.offset;
    while (start > 0 && this.text[start - 1] !== '\n') start--;
    return this.text.slice(start, start + indentAt(this.text, span.offset));
  }

  private get lineEnd(): string {
    return lineEndOf(this.text);
  }
}

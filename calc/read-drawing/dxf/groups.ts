import { numberPattern } from '../number-pattern.ts';

/** A pair of a DXF file: what follows, and itself. Source: AutoCAD DXF reference, "Group codes". */
export interface Group {
  readonly code: number;
  readonly value: string;
  /** of the code in the file, from 1 */
  readonly line: number;
}

/** Why a file is no list of pairs from some line on. */
export interface BrokenPairs {
  readonly line: number;
  readonly found: string;
}

/** Reads pairs one by one; the whole file is never split, so that a large one takes no second memory. */
export class GroupReader {
  private at = 0;
  private line = 0;
  private ahead: Group | undefined;
  private wrong: BrokenPairs | undefined;
  private readonly source: string;
  private readonly ends: string;

  constructor(source: string) {
    // Carriage returns alone end the lines of old files.
    this.ends = source.includes('\n') ? '\n' : '\r';
    this.source = source;
    this.skipEmpty();
    this.ahead = this.read();
  }

  get broken(): BrokenPairs | undefined {
    return this.wrong;
  }

  peek(): Group | undefined {
    return this.ahead;
  }

  next(): Group | undefined {
    const group = this.ahead;
    if (group !== undefined) this.ahead = this.read();
    return group;
  }

  private read(): Group | undefined {
    if (this.at >= this.source.length) return undefined;
    const typed = this.row();
    const line = this.line;
    const code = typed.trim();
    if (code === '' && this.at >= this.source.length) return undefined;
    if (!/^-?\d{1,4}$/.test(code)) {
      this.wrong = { line, found: code.slice(0, 40) };
      return undefined;
    }
    return { code: Number(code), value: this.row(), line };
  }

  /** Empty lines before the first pair are nobody's value. */
  private skipEmpty(): void {
    for (let from = this.at; from < this.source.length; from = this.at) {
      const line = this.line;
      if (this.row().trim() === '') continue;
      [this.at, this.line] = [from, line];
      return;
    }
  }

  private row(): string {
    let end = this.source.indexOf(this.ends, this.at);
    if (end < 0) end = this.source.length;
    const row = this.source.slice(this.at, this.source[end - 1] === '\r' ? end - 1 : end);
    this.at = end + 1;
    this.line++;
    return row;
  }
}

const number = new RegExp(`^${numberPattern}$`);

/** The number of a pair; NaN where it is none. */
export function numberOf(value: string | undefined): number {
  const typed = (value ?? '').trim();
  return number.test(typed) ? Number(typed) : Number.NaN;
}

/** A name as its writer meant it: `\U+00E4` is a letter that the code page of the file has not. */
export const nameOf = (value: string | undefined): string =>
  (value ?? '')
    .trim()
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));

import { carriedLines } from './carry.ts';
import type { CodeLine } from './code-lines.ts';

/** One figure beside a line. */
export interface Part {
  readonly kind: string;
  readonly words: string;
  /** false where it cannot be told: the words say so */
  readonly known: boolean;
  /** it is true whatever cannot be read: never kept from before */
  readonly live?: true;
}

/**
 * How far the figures of a line can be trusted: `whole`, its recipe reads well; `waiting`, it names something that there is not;
 * `torn`, a line of it cannot be read, so that figures may lack what that line says.
 */
export type Trust = 'whole' | 'waiting' | 'torn';

/** What the text says of a line just now. */
export interface Fresh<P extends Part> {
  /** none where the line has no figures */
  readonly parts: readonly P[] | undefined;
  readonly trust: Trust;
  /** the line itself cannot be read */
  readonly unread: boolean;
}

/** A figure as it is shown. */
export interface ToldPart<P extends Part> {
  readonly part: P;
  /** it is from before the text was broken, and may no longer hold */
  readonly old: boolean;
}

/** What is shown beside a line. */
export interface Told<P extends Part> {
  readonly line: CodeLine;
  readonly parts: readonly ToldPart<P>[];
}

interface Good<P> {
  readonly parts: readonly P[];
  /** the line as it was when they were told */
  readonly text: string;
}

/**
 * Figures beside the lines of one text that stay where they are while a line is half typed: a line keeps its last good ones
 * until its recipe can be read again.
 */
export class KeptLines<P extends Part> {
  private lines: readonly CodeLine[] = [];
  private good: readonly (Good<P> | undefined)[] = [];

  tell(lines: readonly CodeLine[], freshOf: (line: CodeLine) => Fresh<P>): Told<P>[] {
    const from = carriedLines(this.lines, lines);
    const good: (Good<P> | undefined)[] = [];
    const told: Told<P>[] = [];
    for (const [i, line] of lines.entries()) {
      const { parts, keep } = settled(line, freshOf(line), this.good[from[i] ?? -1]);
      good.push(keep);
      if (parts.length > 0) told.push({ line, parts });
    }
    this.lines = lines;
    this.good = good;
    return told;
  }

  forget(): void {
    this.lines = [];
    this.good = [];
  }
}

interface Settled<P extends Part> {
  readonly parts: readonly ToldPart<P>[];
  readonly keep: Good<P> | undefined;
}

function settled<P extends Part>(line: CodeLine, fresh: Fresh<P>, good: Good<P> | undefined): Settled<P> {
  const { parts = [], trust, unread } = fresh;
  const rewritten = good !== undefined && !unread && line.text !== good.text && parts.every(({ known }) => known);
  if (trust === 'whole' || good === undefined || rewritten) {
    return {
      parts: parts.map((part) => ({ part, old: false })),
      keep: parts.length === 0 ? undefined : { parts, text: line.text },
    };
  }
  // where a name is missing, what there is now; where a line cannot be read, what there was
  const shape = trust === 'waiting' && parts.length > 0 ? parts : good.parts;
  const kept = shape.map(({ kind }): ToldPart<P> => {
    const now = parts.find((part) => part.kind === kind);
    const before = good.parts.find((part) => part.kind === kind);
    const holds =
      now !== undefined && (now.live === true || now.words === before?.words || (trust === 'waiting' && now.known));
    if (before === undefined || holds || (now !== undefined && !before.known))
      return { part: (now ?? before) as P, old: false };
    return { part: before, old: true };
  });
  return { parts: kept, keep: trust === 'torn' ? good : { parts: kept.map(({ part }) => part), text: line.text } };
}

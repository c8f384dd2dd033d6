import type { LangiumDocument } from 'langium';
import type { HoverBook } from '../hover/book.ts';
import type { CodeLine } from '../kept/code-lines.ts';
import { KeptLines, type Told } from '../kept/kept-lines.ts';
import { trustOf } from '../kept/trust.ts';
import { openFindings } from '../open-findings.ts';
import { type LensPart, lensParts } from './parts.ts';

/** The line of lenses above each recipe of one document. */
export class DocumentLenses {
  private readonly book: HoverBook;
  private readonly wanted: () => boolean;
  private readonly kept = new KeptLines<LensPart>();

  constructor(book: HoverBook, wanted: () => boolean) {
    this.book = book;
    this.wanted = wanted;
  }

  /** The heads of recipes with their lenses, in the order of the text. */
  tell(document: LangiumDocument, lines: readonly CodeLine[]): Told<LensPart>[] {
    if (!this.wanted()) return [];
    const { analysis } = this.book;
    const entries = analysis.entries(document);
    const trust = trustOf(document, entries, lines);
    const parts = new Map<number, () => LensPart[]>();
    for (const { model, source } of entries) {
      const recipe = model.kind === 'recipe' ? model.recipes[0] : undefined;
      if (recipe === undefined) continue;
      parts.set(source.offset, () =>
        lensParts(analysis.bench(recipe), openFindings(document, source), this.book.style()),
      );
    }
    return this.kept.tell(lines, (line) => ({ parts: parts.get(line.start)?.(), ...trust.of(line) }));
  }

  forget(): void {
    this.kept.forget();
  }
}

import type { LangiumDocument } from 'langium';
import type { HintChoice } from '../../protocol/hint-kinds.ts';
import type { HoverBook } from '../hover/book.ts';
import type { CodeLine } from '../kept/code-lines.ts';
import { KeptLines, type Told } from '../kept/kept-lines.ts';
import { trustOf } from '../kept/trust.ts';
import { figureLines } from './of-document.ts';
import type { HintPart } from './part.ts';

/** Figures beside the lines of one document. */
export class DocumentHints {
  private readonly book: HoverBook;
  private readonly chosen: () => HintChoice;
  private readonly kept = new KeptLines<HintPart>();

  constructor(book: HoverBook, chosen: () => HintChoice) {
    this.book = book;
    this.chosen = chosen;
  }

  /** The lines that have some, in the order of the text. */
  tell(document: LangiumDocument, lines: readonly CodeLine[]): Told<HintPart>[] {
    const chosen = this.chosen();
    if (!Object.values(chosen).includes(true)) return [];
    const { analysis } = this.book;
    const entries = analysis.entries(document);
    const figures = figureLines(analysis, entries, chosen, this.book.style());
    const trust = trustOf(document, entries, lines);
    return this.kept.tell(lines, (line) => {
      const found = figures.get(line.start);
      // a line that a likeness brings stands where the likeness is written
      return { parts: found?.head === line.head ? found.parts() : undefined, ...trust.of(line) };
    });
  }

  forget(): void {
    this.kept.forget();
  }
}

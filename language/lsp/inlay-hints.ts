import type { LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint, InlayHintLabelPart, InlayHintParams, Range } from 'vscode-languageserver-protocol';
import type { HintPart } from '../view/hints/part.ts';
import { hintTooltip } from '../view/hints/tooltip.ts';
import type { HoverBook } from '../view/hover/book.ts';
import type { Told } from '../view/kept/kept-lines.ts';
import { markOf } from '../view/kept/mark.ts';
import type { ShownFigures } from './shown-figures.ts';

const between = ' · ';

/** textDocument/inlayHint: figures at the end of the lines of stacks and processes. Synchronous: what the memo has is not computed. */
export class LayupInlayHints implements InlayHintProvider {
  private readonly figures: ShownFigures<HintPart>;
  private readonly book: HoverBook;

  constructor(figures: ShownFigures<HintPart>, book: HoverBook) {
    this.figures = figures;
    this.book = book;
  }

  getInlayHints(document: LangiumDocument, { range }: InlayHintParams): InlayHint[] {
    return this.figures.tell(document).flatMap((told) => this.hintOf(document, told, range));
  }

  private hintOf(document: LangiumDocument, { line, parts }: Told<HintPart>, range: Range): InlayHint[] {
    const position = document.textDocument.positionAt(line.end);
    if (position.line < range.start.line || position.line > range.end.line) return [];
    const label = parts.map(
      ({ part, old }, i): InlayHintLabelPart => ({
        value: `${i === 0 ? '' : between}${part.words}`,
        tooltip: { kind: 'markdown', value: hintTooltip(part, old, this.book) },
      }),
    );
    return [{ position, label: [...label, { value: markOf(parts.some(({ old }) => old)) }], paddingLeft: true }];
  }
}

import type { LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver-protocol';
import { type HoverProvider as Answer, hoverAt, hovers } from '../view/hover/index.ts';

/** textDocument/hover */
export class LayupHoverProvider implements HoverProvider {
  private readonly answers: readonly Answer[];

  constructor(answers: readonly Answer[] = hovers) {
    this.answers = answers;
  }

  getHoverContent(document: LangiumDocument, { position }: HoverParams): Hover | undefined {
    const { textDocument } = document;
    const found = hoverAt(document, textDocument.offsetAt(position), this.answers);
    if (found === undefined) return undefined;
    const range = { start: textDocument.positionAt(found.start), end: textDocument.positionAt(found.end) };
    return { contents: { kind: 'markdown', value: found.markdown }, range };
  }
}

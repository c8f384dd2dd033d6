import type { LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver-protocol';
import { hoverAt, type HoverProvider as TextProvider } from '../view/hover/index.ts';

/** textDocument/hover */
export class LayupHoverProvider implements HoverProvider {
  private readonly providers: () => Promise<readonly TextProvider[] | undefined>;

  /** without providers: those that know the words alone; others are loaded with the first hover */
  constructor(providers: () => Promise<readonly TextProvider[] | undefined> = async () => undefined) {
    this.providers = providers;
  }

  async getHoverContent(document: LangiumDocument, { position }: HoverParams): Promise<Hover | undefined> {
    const providers = await this.providers();
    const { textDocument } = document;
    const found = hoverAt(document, textDocument.offsetAt(position), providers);
    if (found === undefined) return undefined;
    const range = { start: textDocument.positionAt(found.start), end: textDocument.positionAt(found.end) };
    return { contents: { kind: 'markdown', value: found.markdown }, range };
  }
}

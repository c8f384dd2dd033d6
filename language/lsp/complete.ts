import type { LangiumDocument } from 'langium';
import type { CompletionProvider, CompletionProviderOptions } from 'langium/lsp';
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type CompletionParams,
  InsertTextFormat,
  InsertTextMode,
} from 'vscode-languageserver-protocol';
import type { CompletionSort } from '../view/complete/completion.ts';
import { type CompletionBook, completionsAt } from '../view/complete/index.ts';

const kinds: Readonly<Record<CompletionSort, CompletionItemKind>> = {
  block: CompletionItemKind.Snippet,
  word: CompletionItemKind.Property,
  verb: CompletionItemKind.Function,
  value: CompletionItemKind.EnumMember,
  link: CompletionItemKind.Keyword,
  unit: CompletionItemKind.Unit,
  rule: CompletionItemKind.Reference,
  material: CompletionItemKind.Class,
  tool: CompletionItemKind.Class,
  recipe: CompletionItemKind.Struct,
  layer: CompletionItemKind.Variable,
  zone: CompletionItemKind.Field,
  feed: CompletionItemKind.Variable,
  vent: CompletionItemKind.Variable,
  let: CompletionItemKind.Constant,
  load: CompletionItemKind.Event,
  size: CompletionItemKind.Struct,
  end: CompletionItemKind.Field,
};

/** textDocument/completion */
export class LayupCompletionProvider implements CompletionProvider {
  readonly completionOptions: CompletionProviderOptions = { triggerCharacters: [' ', ',', '(', '/'] };
  private readonly book: CompletionBook;

  constructor(book: CompletionBook) {
    this.book = book;
  }

  getCompletion({ textDocument }: LangiumDocument, { position }: CompletionParams): CompletionList {
    const offers = completionsAt(textDocument.getText(), textDocument.offsetAt(position), this.book);
    const items = offers.map((offer, i): CompletionItem => {
      const range = { start: textDocument.positionAt(offer.start), end: textDocument.positionAt(offer.end) };
      return {
        label: offer.label,
        kind: kinds[offer.sort],
        textEdit: { range, newText: offer.insert },
        // as offered: what fits best comes first, and an editor sorts by this text
        sortText: String(i).padStart(4, '0'),
        ...(offer.filter === undefined ? {} : { filterText: offer.filter }),
        ...(offer.detail === undefined ? {} : { detail: offer.detail }),
        ...(offer.documentation === undefined
          ? {}
          : { documentation: { kind: 'markdown', value: offer.documentation } }),
        ...(offer.snippet === undefined
          ? {}
          : { insertTextFormat: InsertTextFormat.Snippet, insertTextMode: InsertTextMode.adjustIndentation }),
      };
    });
    return { isIncomplete: false, items };
  }
}

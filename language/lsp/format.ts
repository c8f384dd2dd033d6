import type { LangiumDocument } from 'langium';
import type { Formatter, LangiumServices } from 'langium/lsp';
import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingOptions,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  TextEdit,
} from 'vscode-languageserver-protocol';
import { tokenKinds } from '../grammar/tokens.ts';
import { formatChanges } from '../view/format/index.ts';
import { plainTokensOf } from './plain-tokens.ts';

/** textDocument/formatting, rangeFormatting, onTypeFormatting. */
export class LayupFormatter implements Formatter {
  readonly formatOnTypeOptions: DocumentOnTypeFormattingOptions = { firstTriggerCharacter: '}' };
  private readonly services: LangiumServices;

  constructor(services: LangiumServices) {
    this.services = services;
  }

  formatDocument(document: LangiumDocument, _params: DocumentFormattingParams): TextEdit[] {
    return this.edits(document, 0, Number.POSITIVE_INFINITY);
  }

  formatDocumentRange(document: LangiumDocument, { range }: DocumentRangeFormattingParams): TextEdit[] {
    // a selection of whole lines ends at the beginning of the next line, which is not selected
    const endsBefore = range.end.character === 0 && range.end.line > range.start.line;
    return this.edits(document, range.start.line, endsBefore ? range.end.line - 1 : range.end.line);
  }

  formatDocumentOnType(document: LangiumDocument, { position }: DocumentOnTypeFormattingParams): TextEdit[] {
    return this.edits(document, position.line, position.line);
  }

  private edits(document: LangiumDocument, firstLine: number, lastLine: number): TextEdit[] {
    const text = document.textDocument;
    const from = text.offsetAt({ line: firstLine, character: 0 });
    const to =
      lastLine + 1 < text.lineCount ? text.offsetAt({ line: lastLine + 1, character: 0 }) : Number.POSITIVE_INFINITY;
    const kinds = tokenKinds(this.services.parser.Lexer.definition);
    return formatChanges(
      text.getText(),
      plainTokensOf(this.services, text),
      kinds,
      (line) => line.start >= from && line.start < to,
    ).map((change) => ({
      range: { start: text.positionAt(change.start), end: text.positionAt(change.end) },
      newText: change.text,
    }));
  }
}

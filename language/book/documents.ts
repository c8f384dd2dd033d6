import {
  type AstNode,
  DefaultLangiumDocumentFactory,
  DefaultLangiumDocuments,
  isOperationCancelled,
  type LangiumDocument,
  type Mutable,
  type ParseResult,
  type ParserOptions,
  type Stream,
  stream,
  type TextDocument,
  type URI,
} from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { type LayupLexingReport, problemsOf } from '../grammar/lexer.ts';
import type { LayupServices } from './services.ts';
import { isStock } from './stock.ts';

/** The documents of the book. Those of the stock library are found by their address and are not among `all`. */
export class LayupDocuments extends DefaultLangiumDocuments {
  readonly #stock: (uri: URI) => LangiumDocument | undefined;
  /** all of them, until one comes or goes: a build looks through them several times */
  #all: readonly LangiumDocument[] | undefined;

  constructor(services: LangiumSharedServices) {
    super(services);
    this.#stock = (uri) => (services.ServiceRegistry.getServices(uri) as LayupServices).stock.document(uri);
  }

  override get all(): Stream<LangiumDocument> {
    this.#all ??= this.documentTrie.all();
    return stream(this.#all);
  }

  override addDocument(document: LangiumDocument): void {
    this.#all = undefined;
    super.addDocument(document);
  }

  override deleteDocument(uri: URI): LangiumDocument | undefined {
    this.#all = undefined;
    return super.deleteDocument(uri);
  }

  override deleteDocuments(folder: URI): LangiumDocument[] {
    this.#all = undefined;
    return super.deleteDocuments(folder);
  }

  override getDocument(uri: URI): LangiumDocument | undefined {
    return isStock(uri) ? this.#stock(uri) : super.getDocument(uri);
  }

  override hasDocument(uri: URI): boolean {
    return isStock(uri) ? this.#stock(uri) !== undefined : super.hasDocument(uri);
  }
}

/** Reads and parses documents. No file and no text can stop the build of the others. */
export class LayupDocumentFactory extends DefaultLangiumDocumentFactory {
  protected override async getUpdatedText<T extends AstNode>(
    document: Mutable<LangiumDocument<T>>,
    textDocument: TextDocument | undefined,
  ): Promise<string> {
    if (textDocument !== undefined) return textDocument.getText();
    try {
      return await this.fileSystemProvider.readFile(document.uri);
    } catch (error) {
      // Gone since the folder was listed, or not ours to read.
      console.error(`${document.uri.toString(true)} could not be read: ${String(error)}`);
      return '';
    }
  }

  protected override parse<T extends AstNode>(uri: URI, text: string, options?: ParserOptions): ParseResult<T> {
    const { LangiumParser } = this.serviceRegistry.getServices(uri).parser;
    try {
      return LangiumParser.parse<T>(text, options);
    } catch (error) {
      if (isOperationCancelled(error)) throw error;
      console.error(`${uri.toString(true)} could not be parsed:`, error);
      return unread(LangiumParser.parse<T>('', options));
    }
  }

  protected override parseAsync<T extends AstNode>(uri: URI, text: string): Promise<ParseResult<T>> {
    return Promise.resolve(this.parse<T>(uri, text));
  }
}

/** The tree of an empty text, and one problem that says why it is empty. */
function unread<T extends AstNode>(empty: ParseResult<T>): ParseResult<T> {
  const report: LayupLexingReport = {
    diagnostics: [],
    problems: [
      ...problemsOf(empty.lexerReport),
      { rule: 'line/not-understood', message: 'this file could not be read: please report it', offset: 0, length: 0 },
    ],
  };
  return { ...empty, lexerReport: report };
}

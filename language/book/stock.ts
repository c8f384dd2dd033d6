import { type AstNodeDescription, DocumentState, type LangiumDocument, URI } from 'langium';
import { stockIndex } from './generated/stock.ts';
import { stock as texts } from './generated/stock-texts.ts';
import type { BookNamespace } from './namespaces.ts';
import type { LayupServices } from './services.ts';

/** One entry of the stock library, known without reading its file. */
export interface StockEntry {
  readonly name: string;
  /** the word that it begins with: `fabric`, `resin`, `tool` ... */
  readonly kind: string;
  readonly file: string;
  readonly title?: string;
  /** zero-based line of the entry in its file */
  readonly line: number;
  /** its place among the entries of its file */
  readonly at: number;
}

export const stockScheme = 'layup-stock';
export const stockUri = (file: string): URI => URI.from({ scheme: stockScheme, path: `/${file}` });
export const isStock = (uri: URI): boolean => uri.scheme === stockScheme;
const fileOf = (uri: URI): string => uri.path.slice(1);

/** The materials that ship with the tool. A file is read when a name of it is asked for, and never changes. */
export class StockLibrary {
  readonly #services: LayupServices;
  readonly #loaded = new Map<string, LangiumDocument>();
  readonly #entries = new Map<string, AstNodeDescription>();

  constructor(services: LayupServices) {
    this.#services = services;
    for (const entry of stockIndex) {
      const key = `${namespaceOfKind(entry.kind)}:${entry.name}`;
      if (!this.#entries.has(key)) this.#entries.set(key, describeStock(entry));
    }
    // What the lines of a stock file mean may change with the workspace, whose entries stand before those of stock.
    services.shared.workspace.DocumentBuilder.onUpdate(() => {
      for (const document of this.#loaded.values()) services.references.Linker.unlink(document);
    });
  }

  /** The entry of that name, its file not read yet. */
  find(namespace: BookNamespace, name: string): AstNodeDescription | undefined {
    return this.#entries.get(`${namespace}:${name}`);
  }

  /** All entries of a namespace, no file read for them. */
  *all(namespace: BookNamespace): Generator<AstNodeDescription> {
    for (const [key, entry] of this.#entries) if (key.startsWith(`${namespace}:`)) yield entry;
  }

  get entries(): readonly StockEntry[] {
    return stockIndex;
  }

  text(uri: URI): string | undefined {
    return isStock(uri) ? texts[fileOf(uri)] : undefined;
  }

  /** The document of a stock file; its references are linked when they are followed. */
  document(uri: URI): LangiumDocument | undefined {
    const key = uri.toString();
    const known = this.#loaded.get(key);
    const text = this.text(uri);
    if (known !== undefined || text === undefined) return known;
    const document = this.#services.shared.workspace.LangiumDocumentFactory.fromString(text, uri);
    document.state = DocumentState.Validated;
    document.diagnostics = [];
    this.#loaded.set(key, document);
    return document;
  }

  /** Names of the files that have been read so far. */
  get filesRead(): readonly string[] {
    return [...this.#loaded.values()].map((document) => fileOf(document.uri));
  }
}

const namespaceOfKind = (kind: string): BookNamespace => (kind === 'tool' || kind === 'recipe' ? kind : 'material');

function describeStock(entry: StockEntry): AstNodeDescription {
  const type = { material: 'Material', tool: 'Tool', recipe: 'Recipe' }[namespaceOfKind(entry.kind)];
  return { name: entry.name, type, documentUri: stockUri(entry.file), path: `/entries@${entry.at}` };
}

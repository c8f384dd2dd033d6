import {
  type AstNode,
  type AstNodeDescription,
  AstUtils,
  CstUtils,
  EMPTY_STREAM,
  type IndexManager,
  type LangiumDocument,
  type LangiumDocuments,
  type ReferenceDescription,
  type Stream,
  stream,
  type URI,
} from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { type Book, isNamed } from '../grammar/generated/ast.ts';
import { describe } from './descriptions.ts';
import { type BookNamespace, namespaceOf } from './namespaces.ts';

/** What a document may ask the book for: an entry, the shop's facts, or a drawing file. */
export type Key = string;
export const keyOf = (namespace: BookNamespace, name: string): Key => `${namespace}:${name}`;
export const shopKey: Key = 'shop';
export const fileKey = (uri: URI): Key => `file:${uri.toString()}`;

/**
 * Who exports which name, and who asked for which. An edit reaches exactly the documents that asked for a name which the
 * edited file exported before or exports now, whether they found it there, in another file, in stock or nowhere.
 */
export class BookIndex implements IndexManager {
  /** Schemes whose documents belong to the book; the two sides of a comparison, say, are only looked at. */
  readonly schemes: Set<string> = new Set(['file', 'untitled']);
  readonly #documents: () => LangiumDocuments;
  readonly #services: LangiumSharedServices;
  readonly #exports = new Map<string, ReadonlyMap<Key, readonly AstNodeDescription[]>>();
  readonly #entries = new Map<Key, AstNodeDescription[]>();
  /** By document, what it exported before the change that is going on. */
  readonly #before = new Map<string, ReadonlySet<Key>>();
  /** Names that a changed file exports now and did not before. */
  readonly #appeared = new Set<Key>();
  readonly #asked = new Map<string, Set<Key>>();
  /** Documents that are about to be linked anew: what they asked for is forgotten when they ask again, one at a time. */
  readonly #asksAnew = new Set<string>();
  readonly #askers = new Map<Key, Set<string>>();

  constructor(services: LangiumSharedServices) {
    this.#services = services;
    this.#documents = () => services.workspace.LangiumDocuments;
  }

  /** Every entry of the workspace with this name, the one that counts first. */
  entries(namespace: BookNamespace, name: string): readonly AstNodeDescription[] {
    return this.#entries.get(keyOf(namespace, name)) ?? [];
  }

  /** The `shop` entries of the workspace; one is right, the first counts. */
  shops(): readonly AstNodeDescription[] {
    return this.#entries.get(shopKey) ?? [];
  }

  /** Notes that what is known about a document depends on what the book says about a key. */
  noteAsked(document: URI, key: Key): void {
    const uri = document.toString();
    if (this.#asksAnew.delete(uri)) this.#forgetAsked(uri);
    const keys = this.#asked.get(uri) ?? new Set();
    if (keys.has(key)) return;
    keys.add(key);
    this.#asked.set(uri, keys);
    const askers = this.#askers.get(key) ?? new Set();
    this.#askers.set(key, askers);
    askers.add(uri);
  }

  /** The documents that asked for a key, as texts of their addresses. */
  askers(key: Key): ReadonlySet<string> {
    return this.#askers.get(key) ?? new Set();
  }

  /** Documents that must be linked again since a name that they asked for has appeared; asked once. */
  takeWaiting(): ReadonlySet<string> {
    const waiting = new Set<string>();
    for (const key of this.#appeared) for (const uri of this.askers(key)) waiting.add(uri);
    this.#appeared.clear();
    return waiting;
  }

  remove(uri: URI): void {
    this.removeContent(uri);
    this.#asksAnew.delete(uri.toString());
    this.#forgetAsked(uri.toString());
  }

  removeContent(address: URI): void {
    const uri = address.toString();
    const exported = this.#exports.get(uri);
    if (exported === undefined) return;
    this.#exports.delete(uri);
    this.#before.set(uri, new Set(exported.keys()));
    for (const key of exported.keys()) {
      const left = (this.#entries.get(key) ?? []).filter((entry) => entry.documentUri.toString() !== uri);
      if (left.length > 0) this.#entries.set(key, left);
      else this.#entries.delete(key);
    }
  }

  /** Until it asks again, a document is taken to hang on what it asked for last: an edit of the materials removes those of a whole book. */
  removeReferences(address: URI): void {
    this.#asksAnew.add(address.toString());
  }

  #forgetAsked(uri: string): void {
    for (const key of this.#asked.get(uri) ?? []) {
      const askers = this.#askers.get(key);
      askers?.delete(uri);
      if (askers?.size === 0) this.#askers.delete(key);
    }
    this.#asked.delete(uri);
  }

  updateContent(document: LangiumDocument): Promise<void> {
    this.removeContent(document.uri);
    const uri = document.uri.toString();
    const exported = this.schemes.has(document.uri.scheme)
      ? this.#exportsOf(document)
      : new Map<Key, AstNodeDescription[]>();
    const before = this.#before.get(uri);
    this.#before.delete(uri);
    this.#exports.set(uri, exported);
    for (const [key, entries] of exported) {
      const all = [...(this.#entries.get(key) ?? []), ...entries];
      // the order of the files is that of their addresses, whatever order they were read in
      all.sort((a, b) => compare(a.documentUri.toString(), b.documentUri.toString()));
      this.#entries.set(key, all);
      if (!before?.has(key)) this.#appeared.add(key);
    }
    return Promise.resolve();
  }

  /** Nothing to do: what a document asked for is noted while it is linked. */
  updateReferences(): Promise<void> {
    return Promise.resolve();
  }

  isAffected(document: LangiumDocument, changed: Set<string>): boolean {
    const asked = this.#asked.get(document.uri.toString());
    if (asked === undefined) return false;
    for (const uri of changed) for (const key of this.#before.get(uri) ?? []) if (asked.has(key)) return true;
    return false;
  }

  allElements(type?: string, uris?: Set<string>): Stream<AstNodeDescription> {
    const found: AstNodeDescription[] = [];
    for (const [uri, exported] of this.#exports) {
      if (uris !== undefined && !uris.has(uri)) continue;
      for (const entries of exported.values()) {
        for (const entry of entries)
          if (type === undefined || this.#services.AstReflection.isSubtype(entry.type, type)) found.push(entry);
      }
    }
    return stream(found);
  }

  findAllReferences(target: AstNode, _path?: string): Stream<ReferenceDescription> {
    const entry = entryOf(target);
    const own = AstUtils.getDocument(target);
    const namespace = namespaceOf(entry) as BookNamespace | undefined;
    if (namespace === undefined || !isNamed(entry) || entry.name === undefined) return EMPTY_STREAM;
    const found: ReferenceDescription[] = [];
    // Only a document that asked for the entry can refer to it or to a name inside it.
    const asking = this.askers(keyOf(namespace, entry.name));
    for (const document of this.#documents().all) {
      if (document !== own && !asking.has(document.uri.toString())) continue;
      for (const reference of document.references) {
        if (!('ref' in reference) || reference.ref !== target || reference.$refNode === undefined) continue;
        const { locator } = this.#locate(document);
        const container = reference.$refNode.astNode;
        found.push({
          sourceUri: document.uri,
          get sourcePath() {
            return locator.getAstNodePath(container);
          },
          targetUri: own.uri,
          get targetPath() {
            return locator.getAstNodePath(target);
          },
          segment: CstUtils.toDocumentSegment(reference.$refNode),
          local: document === own,
        });
      }
    }
    return stream(found);
  }

  #exportsOf(document: LangiumDocument): Map<Key, AstNodeDescription[]> {
    const exported = new Map<Key, AstNodeDescription[]>();
    const { locator } = this.#locate(document);
    const add = (key: Key, node: AstNode, name: string): void => {
      const description = describe(node, name, locator);
      const same = exported.get(key);
      if (same === undefined) exported.set(key, [description]);
      else same.push(description);
    };
    for (const entry of (document.parseResult.value as Book).entries ?? []) {
      if (entry.$type === 'Shop') add(shopKey, entry, 'shop');
      else if (isNamed(entry) && entry.name !== undefined)
        add(keyOf(namespaceOf(entry) as BookNamespace, entry.name), entry, entry.name);
    }
    return exported;
  }

  #locate(document: LangiumDocument) {
    return { locator: this.#services.ServiceRegistry.getServices(document.uri).workspace.AstNodeLocator };
  }
}

/** The entry of the book that a node stands in, or is. */
export function entryOf(node: AstNode): AstNode {
  let entry = node;
  while (entry.$container !== undefined && entry.$container.$type !== 'Book') entry = entry.$container;
  return entry;
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

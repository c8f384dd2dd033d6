import {
  type AstNode,
  type AstNodeDescription,
  type Cancellation,
  DefaultLinker,
  interruptAndCheck,
  isReference,
  type LangiumDocument,
  type LinkingError,
  type ReferenceInfo,
} from 'langium';
import type { Book, FileShape } from '../grammar/generated/ast.ts';
import { drawingFile } from './drawing-files.ts';
import { type BookIndex, fileKey, shopKey } from './index-manager.ts';
import type { BookNames } from './names.ts';
import type { LayupServices } from './services.ts';

/** Links by one look-up a reference; a name that is not known is no error here, the rules speak of it. */
export class LayupLinker extends DefaultLinker {
  readonly #names: () => BookNames;
  readonly #index: BookIndex;

  constructor(services: LayupServices) {
    super(services);
    this.#names = () => services.names;
    this.#index = services.shared.workspace.IndexManager;
  }

  override async link(document: LangiumDocument, token?: Cancellation.CancellationToken): Promise<void> {
    for (const entry of (document.parseResult.value as Book).entries ?? []) {
      if (token !== undefined) await interruptAndCheck(token);
      if (entry.$type === 'Recipe' || entry.$type === 'BuildRecord') this.#index.noteAsked(document.uri, shopKey);
      this.#linkBelow(entry, document);
    }
  }

  /** As Langium does, but for a `delete` on each of a book's references, which makes every later look at them slow. */
  override unlink(document: LangiumDocument): void {
    for (const reference of document.references as Linked[]) {
      if ('_ref' in reference) {
        reference._ref = undefined;
        reference._nodeDescription = undefined;
      }
    }
    document.references = [];
  }

  override getCandidate(info: ReferenceInfo): AstNodeDescription | LinkingError {
    return this.#names().resolve(info) ?? this.createLinkingError(info);
  }

  protected override createLinkingError(info: ReferenceInfo, target?: AstNodeDescription): LinkingError {
    return { info, message: `nothing is called ${info.reference.$refText}`, targetDescription: target };
  }

  /** Walks with a list of its own: no call goes deeper than the text is nested. */
  #linkBelow(entry: AstNode, document: LangiumDocument): void {
    const left: AstNode[] = [entry];
    for (let node = left.pop(); node !== undefined; node = left.pop()) {
      if (node.$type === 'FileShape') {
        const file = drawingFile(document.uri, (node as FileShape).file);
        if (file !== undefined) this.#index.noteAsked(document.uri, fileKey(file));
      }
      for (const [property, value] of Object.entries(node)) {
        if (property.startsWith('$')) continue;
        if (Array.isArray(value)) {
          for (const [index, item] of value.entries()) {
            if (isNode(item)) left.push(item);
            else if (isReference(item)) this.doLink({ reference: item, container: node, property, index }, document);
          }
        } else if (isNode(value)) left.push(value);
        else if (isReference(value)) this.doLink({ reference: value, container: node, property }, document);
      }
    }
  }
}

/** The grammar has no reference to several entries at once. */
type Linked = LangiumDocument['references'][number] & { _ref?: unknown; _nodeDescription?: unknown };

const isNode = (value: unknown): value is AstNode => typeof value === 'object' && value !== null && '$type' in value;

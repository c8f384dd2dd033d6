import { type AstNode, AstUtils, CstUtils, type LangiumDocument, type Reference } from 'langium';
import type { RenameProvider } from 'langium/lsp';
// Of the connection's own package: an error of another copy of the protocol would be sent as an answer.
import { LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import {
  type Position,
  type Range,
  type RenameParams,
  type TextDocumentPositionParams,
  TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { type BookIndex, entryOf, keyOf } from '../book/index-manager.ts';
import { type BookNames, lineOfCopy } from '../book/names.ts';
import { isBookNamespace, type Namespace, namespaceOf } from '../book/namespaces.ts';
import type { LayupReferences } from '../book/references.ts';
import type { LayupServices } from '../book/services.ts';
import { isStock } from '../book/stock.ts';
import { connectives } from '../grammar/connectives.ts';
import type { Named, Recipe } from '../grammar/generated/ast.ts';
import { say } from '../view/text.ts';

/** `lay rest`, `lay kit`, `lay stack` and `like stock` already mean something else. */
const taken: Readonly<Partial<Record<Namespace, readonly string[]>>> = {
  layer: ['rest', 'kit', 'stack'],
  material: ['stock'],
  tool: ['stock'],
};
const legalName =
  /^[_A-Za-z°µμ\u00C0-\u024F\u0370-\u03FF\u0400-\u04FF][A-Za-z0-9_²³\u00C0-\u024F\u0370-\u03FF\u0400-\u04FF]*$/;

interface Spot {
  readonly target: Named & { readonly name: string };
  readonly namespace: Namespace;
  /** the name under the cursor, without the suffix of a copy */
  readonly range: Range;
}

/** Gives an entry or a line another name, in every file that speaks of it. Copies keep their suffix. */
export class LayupRename implements RenameProvider {
  readonly #services: LayupServices;
  readonly #index: BookIndex;

  constructor(services: LayupServices) {
    this.#services = services;
    this.#index = services.shared.workspace.IndexManager;
  }

  prepareRename(document: LangiumDocument, { position }: TextDocumentPositionParams): Range | undefined {
    return this.#spotAt(document, position)?.range;
  }

  rename(document: LangiumDocument, { position, newName }: RenameParams): WorkspaceEdit | undefined {
    const spot = this.#spotAt(document, position);
    if (spot === undefined) return undefined;
    if (newName === spot.target.name) return { changes: {} };
    this.#demandLegal(newName, spot.namespace);
    this.#demandFree(newName, spot);
    const changes: Record<string, TextEdit[]> = {};
    const add = (uri: string, range: Range, text: string): void => {
      const edits = changes[uri] ?? [];
      edits.push(TextEdit.replace(range, text));
      changes[uri] = edits;
    };
    const { bearers, places } = this.#placesOf(spot.target);
    for (const place of places) add(place.uri, place.range, newName);
    for (const bearer of bearers) {
      // `x like stock` speaks of the stock entry by its own name: with another name it must say which one
      const base = (bearer as { readonly base?: Reference }).base;
      if (base?.$refText === 'stock' && base.$refNode !== undefined) {
        add(AstUtils.getDocument(bearer).uri.toString(), base.$refNode.range, spot.target.name);
      }
    }
    return { changes };
  }

  #placesOf(target: Spot['target']): { bearers: readonly AstNode[]; places: readonly { uri: string; range: Range }[] } {
    const references = this.#services.references.References as LayupReferences;
    const places = [...references.findReferences(target, { includeDeclaration: true })].map(
      ({ sourceUri, segment }) => ({
        uri: sourceUri.toString(),
        // the name comes first in a reference, a copy's suffix behind it; neither runs over a line end
        range: {
          start: segment.range.start,
          end: { line: segment.range.start.line, character: segment.range.start.character + target.name.length },
        },
      }),
    );
    return { bearers: references.bearersOf(target), places };
  }

  #spotAt(document: LangiumDocument, position: Position): Spot | undefined {
    const root = document.parseResult.value.$cstNode;
    if (root === undefined) return undefined;
    const leaf = CstUtils.findDeclarationNodeAtOffset(root, document.textDocument.offsetAt(position), /[^\s,(){}"]/);
    if (leaf === undefined) return undefined;
    const target = this.#services.references.References.findDeclarations(leaf)[0] as Named | undefined;
    const namespace = target && namespaceOf(target);
    if (target?.name === undefined || namespace === undefined) return undefined;
    const assigned = CstUtils.getDatatypeNode(leaf) ?? leaf;
    if (assigned.text === 'stock' && target.name !== 'stock')
      throw refuse(say('`stock` is no name: it speaks of the stock library'));
    if (isStock(AstUtils.getDocument(target).uri)) {
      throw refuse(
        say(
          '`{name}` belongs to the stock library, which is read only: write an entry of your own `like {name}` and use that',
          { name: target.name },
        ),
      );
    }
    const { start } = assigned.range;
    const end = { line: start.line, character: start.character + lineOfCopy(target.name).length };
    return { target: target as Spot['target'], namespace, range: { start, end } };
  }

  #demandLegal(name: string, namespace: Namespace): void {
    if (!legalName.test(name)) {
      throw refuse(
        say(
          '`{name}` is no name: a name begins with a letter and goes on with letters, digits and _ (for example `skin_2`)',
          { name },
        ),
      );
    }
    if (connectives.has(name) || taken[namespace]?.includes(name))
      throw refuse(say('`{name}` has a meaning of its own here: choose another name', { name }));
  }

  #demandFree(name: string, { target, namespace }: Spot): void {
    const names: BookNames = this.#services.names;
    if (isBookNamespace(namespace)) {
      if (names.entries(namespace, name).length > 0)
        throw refuse(say('there is a {kind} `{name}` already', { kind: namespace, name }));
      if (this.#index.askers(keyOf(namespace, name)).size > 0 && names.entry(namespace, name) !== undefined) {
        throw refuse(
          say('`{name}` of the stock library is used in this book: lines that mean it would mean this one', { name }),
        );
      }
      return;
    }
    const recipe = entryOf(target);
    if (recipe.$type !== 'Recipe') return;
    for (const bearer of names.localNamed(recipe as Recipe, name)) {
      if (namespaceOf(bearer) === namespace)
        throw refuse(say('there is a {kind} `{name}` in this recipe already', { kind: namespace, name }));
    }
  }
}

const refuse = (message: string): ResponseError => new ResponseError(LSPErrorCodes.RequestFailed, message);

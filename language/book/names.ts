import {
  type AstNode,
  type AstNodeDescription,
  type AstNodeLocator,
  AstUtils,
  type ReferenceInfo,
  type URI,
} from 'langium';
import type { BuildRecord, Named, Process, Recipe, Size } from '../grammar/generated/ast.ts';
import { longestLikeness } from '../grammar/limits.ts';
import { describe } from './descriptions.ts';
import { type BookIndex, keyOf } from './index-manager.ts';
import { localNames, sizeNames } from './local-names.ts';
import { type BookNamespace, isBookNamespace, type Namespace, namespaceOf, namespacesAt } from './namespaces.ts';
import type { StockLibrary } from './stock.ts';

/** The line that a name such as `mat.2` or `a.m` speaks of: copies bear the name of their line and a suffix. */
export function lineOfCopy(name: string): string {
  const point = name.indexOf('.');
  return point < 0 ? name : name.slice(0, point);
}

/** Names of the book: what a reference means, and what could stand in its place. */
export class BookNames {
  readonly #index: BookIndex;
  readonly #stock: StockLibrary;
  readonly #locator: AstNodeLocator;

  constructor(index: BookIndex, stock: StockLibrary, locator: AstNodeLocator) {
    this.#index = index;
    this.#stock = stock;
    this.#locator = locator;
  }

  /** The entry that a name means: the workspace's, else that of the stock library. */
  entry(namespace: BookNamespace, name: string): AstNodeDescription | undefined {
    return this.#index.entries(namespace, name)[0] ?? this.#stock.find(namespace, name);
  }

  /** Every entry of the workspace with this name, the one that counts first. */
  entries(namespace: BookNamespace, name: string): readonly AstNodeDescription[] {
    return this.#index.entries(namespace, name);
  }

  /** The `shop` entries of the workspace; one is right, the first counts. */
  shops(): readonly AstNodeDescription[] {
    return this.#index.shops();
  }

  /** What a reference means; `undefined` where no such name is known. Notes what was asked for. */
  resolve({ container, property, reference }: ReferenceInfo): AstNodeDescription | undefined {
    const name = reference.$refText;
    const asking = AstUtils.getDocument(container).uri;
    if (property === 'base' && name === 'stock') return this.#stockOf(container, asking);
    const order = namespacesAt(container, property);
    if (order.some((namespace) => !isBookNamespace(namespace))) {
      const local = this.#local(container, name, order, asking);
      if (local !== undefined) return this.#describe(local);
    }
    for (const namespace of order) {
      if (!isBookNamespace(namespace)) continue;
      this.#index.noteAsked(asking, keyOf(namespace, name));
      const entry = this.entry(namespace, name);
      if (entry !== undefined) return entry;
    }
    return undefined;
  }

  /** All that could stand where a reference stands, nearest first; each name once a namespace. */
  *candidates(container: AstNode, property: string): Generator<AstNodeDescription> {
    const asking = AstUtils.getDocument(container).uri;
    for (const namespace of namespacesAt(container, property)) {
      const seen = new Set<string>();
      if (isBookNamespace(namespace)) {
        for (const entry of [...this.#index.allElements(), ...this.#stock.all(namespace)]) {
          if (namespaceByEntry(entry) !== namespace || seen.has(entry.name)) continue;
          seen.add(entry.name);
          yield entry;
        }
        continue;
      }
      for (const names of this.#scopes(container, asking)) {
        for (const [name, nodes] of names.map) {
          const node = nodes.find((one) => namespaceOf(one) === namespace);
          if (node === undefined || seen.has(name) || !names.holds(namespace)) continue;
          seen.add(name);
          yield this.#describe(node);
        }
      }
    }
  }

  /** A recipe and those that it is `like`, nearest first; a cycle ends where it closes. */
  *likenesses(recipe: Recipe, asking: URI = AstUtils.getDocument(recipe).uri): Generator<Recipe> {
    const seen = new Set<Recipe>();
    for (
      let next: Recipe | undefined = recipe;
      next !== undefined && !seen.has(next) && seen.size < longestLikeness;
    ) {
      seen.add(next);
      yield next;
      next = this.#recipe(next.base?.$refText, asking);
    }
  }

  /** The nodes of a recipe, and of those that it is `like`, that bear a name. */
  *localNamed(recipe: Recipe, name: string): Generator<Named> {
    for (const one of this.likenesses(recipe)) yield* localNames(one).get(name) ?? [];
  }

  #local(container: AstNode, name: string, order: readonly Namespace[], asking: URI): Named | undefined {
    const line = lineOfCopy(name);
    for (const names of this.#scopes(container, asking)) {
      const nodes = names.map.get(line);
      if (nodes === undefined) continue;
      for (const namespace of order) {
        if ((line !== name && namespace !== 'layer') || !names.holds(namespace)) continue;
        const node = nodes.find((one) => namespaceOf(one) === namespace);
        if (node !== undefined) return node;
      }
    }
    return undefined;
  }

  /** The maps of names that can be seen from a node, nearest first. */
  *#scopes(
    container: AstNode,
    asking: URI,
  ): Generator<{ map: ReadonlyMap<string, readonly Named[]>; holds(namespace: Namespace): boolean }> {
    const everything = (): boolean => true;
    let likeProcess: string | undefined;
    let recipe: Recipe | undefined;
    for (
      let node: AstNode | undefined = container;
      node !== undefined && recipe === undefined;
      node = node.$container
    ) {
      if (node.$type === 'Size') yield { map: sizeNames(node as Size), holds: everything };
      else if (node.$type === 'Process') likeProcess = (node as Process).base?.$refText;
      else if (node.$type === 'Recipe') recipe = node as Recipe;
      else if (node.$type === 'BuildRecord') recipe = this.#recipe((node as BuildRecord).recipe?.$refText, asking);
    }
    if (recipe !== undefined)
      for (const one of this.likenesses(recipe, asking)) yield { map: localNames(one), holds: everything };
    // `process infusion like y`: the feeds and vents of y are this process's own
    const lender = this.#recipe(likeProcess, asking);
    if (lender === undefined) return;
    for (const one of this.likenesses(lender, asking))
      yield { map: localNames(one), holds: (namespace) => namespace === 'port' };
  }

  #recipe(name: string | undefined, asking: URI): Recipe | undefined {
    if (name === undefined) return undefined;
    this.#index.noteAsked(asking, keyOf('recipe', name));
    return this.#index.entries('recipe', name)[0]?.node as Recipe | undefined;
  }

  #stockOf(container: AstNode, asking: URI): AstNodeDescription | undefined {
    const namespace = namespaceOf(container);
    const name = (container as Partial<Named>).name;
    if (namespace === undefined || !isBookNamespace(namespace) || name === undefined) return undefined;
    this.#index.noteAsked(asking, keyOf(namespace, name));
    return this.#stock.find(namespace, name);
  }

  #describe(node: Named): AstNodeDescription {
    return describe(node, node.name ?? '', this.#locator);
  }
}

function namespaceByEntry(entry: AstNodeDescription): Namespace | undefined {
  return namespaceOf({ $type: entry.type } as AstNode);
}

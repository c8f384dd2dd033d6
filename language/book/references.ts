import {
  type AstNode,
  AstUtils,
  DefaultReferences,
  type FindReferencesOptions,
  type ReferenceDescription,
  type Stream,
  stream,
} from 'langium';
import type { Let, Recipe } from '../grammar/generated/ast.ts';
import { type BookIndex, entryOf, keyOf } from './index-manager.ts';
import { localNames, sizeNames } from './local-names.ts';
import type { BookNames } from './names.ts';
import type { LayupServices } from './services.ts';

/** References over the whole book. A `let` and those that stand in its place in a size or a likeness are one. */
export class LayupReferences extends DefaultReferences {
  readonly #names: () => BookNames;
  readonly #index: BookIndex;

  constructor(services: LayupServices) {
    super(services);
    this.#names = () => services.names;
    this.#index = services.shared.workspace.IndexManager;
  }

  override findReferences(target: AstNode, options: FindReferencesOptions): Stream<ReferenceDescription> {
    const found: ReferenceDescription[] = [];
    for (const node of this.bearersOf(target)) {
      const uri = AstUtils.getDocument(node).uri.toString();
      // the declaration in another file is no place of this document
      const includeDeclaration =
        options.includeDeclaration && (options.documentUri === undefined || options.documentUri.toString() === uri);
      found.push(...super.findReferences(node, { ...options, includeDeclaration }));
    }
    return stream(found);
  }

  /** All nodes that bear the name of one, where they stand for the same thing. */
  bearersOf(target: AstNode): readonly AstNode[] {
    return target.$type === 'Let' ? this.#letsOf(target as Let) : [target];
  }

  #letsOf(target: Let): readonly AstNode[] {
    const recipe = entryOf(target);
    const name = target.name;
    if (recipe.$type !== 'Recipe' || name === undefined) return [target];
    const lets = new Set<AstNode>([target]);
    for (const member of this.#family(recipe as Recipe)) {
      for (const node of localNames(member).get(name) ?? []) if (node.$type === 'Let') lets.add(node);
      for (const item of member.items)
        if (item.$type === 'Size') for (const node of sizeNames(item).get(name) ?? []) lets.add(node);
    }
    return [...lets];
  }

  /** The recipes that are like one another by way of this one. */
  #family(recipe: Recipe): ReadonlySet<Recipe> {
    const family = new Set(this.#names().likenesses(recipe));
    for (const member of family) {
      if (member.name === undefined) continue;
      for (const uri of this.#index.askers(keyOf('recipe', member.name))) {
        for (const entry of this.#index.allElements('Recipe', new Set([uri]))) {
          if ((entry.node as Recipe).base?.ref === member) family.add(entry.node as Recipe);
        }
      }
    }
    return family;
  }
}

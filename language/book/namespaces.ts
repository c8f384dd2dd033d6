import type { AstNode } from 'langium';
import {
  BuildRecord,
  Change,
  ClothLayer,
  CoatLayer,
  CoreLayer,
  Fact,
  GrooveClause,
  Lay,
  Let,
  LetReference,
  Load,
  Lot,
  Material,
  MaterialFact,
  Mirror,
  OverClause,
  Port,
  Process,
  Recipe,
  Shop,
  Size,
  Stack,
  Test,
  Tool,
  Without,
  WordArg,
  WrapClause,
  Zone,
} from '../grammar/generated/ast.ts';

/** Three namespaces of the whole book, and the names inside a recipe. */
export type BookNamespace = 'material' | 'tool' | 'recipe';
export type RecipeNamespace = 'layer' | 'zone' | 'port' | 'let' | 'load' | 'size';
export type Namespace = BookNamespace | RecipeNamespace;

const bookNamespaces: ReadonlySet<Namespace> = new Set<Namespace>(['material', 'tool', 'recipe']);

export function isBookNamespace(namespace: Namespace): namespace is BookNamespace {
  return bookNamespaces.has(namespace);
}

/** The namespace that each kind of named node stands in. */
const namespaceByType: Readonly<Record<string, Namespace>> = {
  [Material.$type]: 'material',
  [Tool.$type]: 'tool',
  [Recipe.$type]: 'recipe',
  [CoatLayer.$type]: 'layer',
  [ClothLayer.$type]: 'layer',
  [CoreLayer.$type]: 'layer',
  [Zone.$type]: 'zone',
  [Port.$type]: 'port',
  [Let.$type]: 'let',
  [Load.$type]: 'load',
  [Size.$type]: 'size',
};

export function namespaceOf(node: AstNode): Namespace | undefined {
  return namespaceByType[node.$type];
}

type Order = readonly Namespace[];
const nowhere: Order = [];
const materials: Order = ['material'];
const recipes: Order = ['recipe'];
const layers: Order = ['layer'];
/** What a line of a recipe may be spoken of as, by `change` and `without`. */
const lines: Order = ['layer', 'port', 'zone', 'load'];
const inRecipe: Order = ['let', 'zone', 'layer', 'port', 'size', 'load'];

/** Where the name at a property is looked for, nearest first. */
const byProperty: Readonly<Record<string, Order>> = {
  [`${Material.$type}:base`]: materials,
  [`${MaterialFact.$type}:material`]: materials,
  [`${Tool.$type}:base`]: ['tool'],
  [`${Recipe.$type}:base`]: recipes,
  [`${Process.$type}:base`]: recipes,
  [`${Process.$type}:resin`]: materials,
  [`${Stack.$type}:tool`]: ['tool'],
  [`${Stack.$type}:caul`]: ['tool', 'material'],
  [`${CoatLayer.$type}:material`]: materials,
  [`${ClothLayer.$type}:material`]: materials,
  [`${ClothLayer.$type}:resin`]: materials,
  [`${CoreLayer.$type}:material`]: materials,
  [`${Mirror.$type}:about`]: layers,
  [`${WrapClause.$type}:target`]: layers,
  [`${GrooveClause.$type}:strip`]: layers,
  [`${OverClause.$type}:zone`]: ['zone', 'layer'],
  [`${Port.$type}:material`]: materials,
  [`${Lay.$type}:first`]: layers,
  [`${Lay.$type}:last`]: layers,
  [`${Lay.$type}:resin`]: materials,
  [`${Test.$type}:load`]: ['load'],
  [`${Test.$type}:layer`]: layers,
  [`${Change.$type}:line`]: lines,
  [`${Without.$type}:line`]: lines,
  [`${LetReference.$type}:target`]: ['let'],
  [`${BuildRecord.$type}:recipe`]: recipes,
  [`${BuildRecord.$type}:size`]: ['size'],
  [`${Lot.$type}:material`]: materials,
};

/** A word of a step or a clause: the recipe's own names first. */
const wordOfRecipe: Order = [...inRecipe, 'material', 'tool'];

/** The words of a fact are mostly choices (`family epoxy`, `kind peel`), so only these may name something. */
const wordOfFact: Readonly<Record<string, Order>> = {
  [BuildRecord.$type]: wordOfRecipe,
  [Recipe.$type]: inRecipe,
  [Size.$type]: inRecipe,
  [Load.$type]: inRecipe,
  PartBlock: ['let', 'zone'],
};
const wordOfNamedFact: Readonly<Record<string, Order>> = { [`${Shop.$type}:stores`]: materials };

/** Where the name that stands at a property of a node is looked for, nearest first. */
export function namespacesAt(container: AstNode, property: string): Order {
  if (container.$type !== WordArg.$type) return byProperty[`${container.$type}:${property}`] ?? nowhere;
  for (let node = container.$container; node !== undefined; node = node.$container) {
    if (node.$type === Fact.$type) {
      const owner = node.$container?.$type ?? '';
      return wordOfNamedFact[`${owner}:${(node as Fact).key}`] ?? wordOfFact[owner] ?? nowhere;
    }
    if (node.$type === MaterialFact.$type) return nowhere;
  }
  return wordOfRecipe;
}

/** Properties that the table knows, for the test that holds it equal to the grammar. */
export const knownProperties: readonly string[] = [...Object.keys(byProperty), `${WordArg.$type}:word`];

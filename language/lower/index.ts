import type { AstNode } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import {
  type BuildRecord,
  type EntryKey,
  entryKey,
  type Material,
  type Recipe,
  type Shop,
  type Tool,
} from '../../calc/model/index.ts';
import type {
  Entry,
  Fact,
  Junk,
  Material as MaterialNode,
  Note,
  BuildRecord as RecordNode,
  Shop as ShopNode,
  Tool as ToolNode,
} from '../grammar/generated/ast.ts';
import { lowerFacts, type Mutable } from './facts.ts';
import { Lowering } from './lowering.ts';
import { materialFacts } from './material-facts.ts';
import { headSpan, nodeSpan, type Places, propertySpan, type Span } from './places.ts';
import type { AcceptLine, Problem } from './problem.ts';
import { lowerRecipe } from './recipe.ts';
import { lowerRecord } from './record.ts';
import { lowerRemarks } from './remarks.ts';
import { shopFacts } from './shop-facts.ts';
import { toolFacts } from './tool-facts.ts';
import { reportUnknownLine } from './unknown.ts';

export { type Places, type Span, spanOf } from './places.ts';
export type { AcceptLine, Fix, Problem, TextEdit } from './problem.ts';

/** What an entry says, as far as it can be read. */
export type EntryModel =
  | { readonly kind: 'shop'; readonly shop: Shop }
  | { readonly kind: 'material'; readonly material: Material }
  | { readonly kind: 'tool'; readonly tool: Tool }
  /** the recipe as written first, then one for each size */
  | { readonly kind: 'recipe'; readonly recipes: readonly Recipe[] }
  | { readonly kind: 'record'; readonly record: BuildRecord }
  | { readonly kind: 'nothing' };

export interface Lowered {
  readonly entry: EntryKey;
  readonly name: string;
  /** the whole entry in the text */
  readonly source: Span;
  readonly model: EntryModel;
  readonly places: Places;
  readonly problems: readonly Problem[];
  readonly accepts: readonly AcceptLine[];
}

/** Turns one entry of the syntax tree into plain data. Never fails: what is missing is `undefined` and a problem at its place. */
export function lowerEntry(node: Entry, origin: 'workspace' | 'stock', index: number): Lowered {
  return { ...lowerByKind(node, origin, index), source: nodeSpan(node) ?? { offset: 0, end: 0 } };
}

type Understood = Omit<Lowered, 'source'>;

function lowerByKind(node: Entry, origin: 'workspace' | 'stock', index: number): Understood {
  switch (node.$type) {
    case 'Shop':
      return done(new Lowering('shop'), '', (low) => ({ kind: 'shop', shop: lowerShop(low, node) }));
    case 'Material':
      return done(new Lowering(keyOf('material', node.name, origin, index)), node.name, (low) =>
        lowerMaterial(low, node, origin),
      );
    case 'Tool':
      return done(new Lowering(keyOf('tool', node.name, origin, index)), node.name, (low) =>
        lowerTool(low, node, origin),
      );
    case 'Recipe':
      return done(new Lowering(keyOf('recipe', node.name, origin, index)), node.name, (low) => ({
        kind: 'recipe',
        recipes: lowerRecipe(low, node).recipes,
      }));
    case 'BuildRecord':
      return done(new Lowering(`record/${recordName(node)} ${node.title ?? ''}/${index}`), recordName(node), (low) => ({
        kind: 'record',
        record: lowerRecord(low, node),
      }));
    default:
      return done(new Lowering(`unknown/${index}`), '', (low) => {
        if (node.$type === 'Unknown') reportUnknownLine(low, node, 'book');
        return { kind: 'nothing' };
      });
  }
}

/** A half-typed entry without its name still has a key of its own. */
function keyOf(
  namespace: 'material' | 'tool' | 'recipe',
  name: string | undefined,
  origin: 'workspace' | 'stock',
  index: number,
): EntryKey {
  return entryKey(namespace, name ?? `?${index}`, origin);
}

const recordName = (node: RecordNode): string =>
  [node.recipe?.$refText, node.size?.$refText, node.date].filter((x) => x !== undefined).join(' ');

function done(low: Lowering, name: string | undefined, work: (low: Lowering) => EntryModel): Understood {
  const model = work(low);
  return {
    entry: low.entry,
    name: name ?? '',
    model,
    places: low.places,
    problems: low.problems,
    accepts: low.accepts,
  };
}

type WithFacts = ShopNode | MaterialNode | ToolNode;
const notesOf = (node: WithFacts): Note[] =>
  (node.items as readonly AstNode[]).filter((item): item is Note => item.$type === 'Note');

function reportJunk(low: Lowering, node: WithFacts, what: string): void {
  for (const item of node.items as readonly (AstNode | Junk)[]) {
    if (item.$type === 'Junk')
      low.problem('line/not-understood', item, text('this line begins with no word of {what}', { what }));
  }
}

function lowerShop(low: Lowering, node: ShopNode): Shop {
  low.placeHead('', node);
  const shop: Mutable<Shop> = {
    entry: low.entry,
    ...lowerRemarks(low, '', node.remarks, notesOf(node), true),
    ...(node.title === undefined ? {} : { title: node.title }),
  };
  lowerFacts<Shop>(
    low,
    node.items.filter((item): item is Fact => item.$type === 'Fact'),
    shopFacts,
    shop,
    'the shop',
  );
  reportJunk(low, node, 'the shop');
  return shop;
}

function lowerMaterial(low: Lowering, node: MaterialNode, origin: 'workspace' | 'stock'): EntryModel {
  low.placeHead('', node);
  if (node.name === undefined) {
    low.problem(
      'line/not-understood',
      headSpan(node),
      text('a {kind} has a name: {kind} {name} "..." {', { kind: node.kind, name: 'my_name' }),
    );
  } else low.place('name', propertySpan(node, 'name'));
  const material: Mutable<Material> = {
    entry: low.entry,
    kind: node.kind,
    name: node.name ?? '',
    origin,
    ...(node.title === undefined ? {} : { title: node.title }),
    ...likeness(low, node),
    ...lowerRemarks(low, '', node.remarks, notesOf(node), true),
  };
  const lines = node.items.filter((item) => item.$type === 'Fact' || item.$type === 'MaterialFact');
  lowerFacts<Material>(low, lines, materialFacts, material, `a ${node.kind}`);
  reportJunk(low, node, `a ${node.kind}`);
  return node.name === undefined ? { kind: 'nothing' } : { kind: 'material', material };
}

function lowerTool(low: Lowering, node: ToolNode, origin: 'workspace' | 'stock'): EntryModel {
  low.placeHead('', node);
  if (node.name === undefined)
    low.problem('line/not-understood', headSpan(node), 'a tool has a name: tool sled_tool {');
  else low.place('name', propertySpan(node, 'name'));
  const tool: Mutable<Tool> = {
    entry: low.entry,
    name: node.name ?? '',
    origin,
    ...(node.title === undefined ? {} : { title: node.title }),
    ...likeness(low, node),
    ...lowerRemarks(low, '', node.remarks, notesOf(node), true),
  };
  lowerFacts<Tool>(
    low,
    node.items.filter((item): item is Fact => item.$type === 'Fact'),
    toolFacts,
    tool,
    'a tool',
  );
  reportJunk(low, node, 'a tool');
  return node.name === undefined ? { kind: 'nothing' } : { kind: 'tool', tool };
}

/** `like stock`, `like biax_440`; the facts are put together where the book is looked up. */
function likeness(low: Lowering, node: MaterialNode | ToolNode): { like?: string } {
  if (node.base !== undefined) {
    low.place('like', propertySpan(node, 'base'));
    return { like: node.base.$refText };
  }
  const head = headSpan(node);
  const typed = head === undefined ? '' : (node.$cstNode?.root.fullText.slice(head.offset, head.end) ?? '');
  if (/\slike$/.test(typed))
    low.problem('line/not-understood', headSpan(node), 'like what? like stock, or the name of another entry');
  return {};
}

export { Lowering };

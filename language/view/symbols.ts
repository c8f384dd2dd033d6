import { type AstNode, GrammarUtils } from 'langium';
import * as ast from '../grammar/generated/ast.ts';
import { headText, nodeRange, type Range } from './ranges.ts';

export type SymbolSort =
  | 'shop'
  | 'material'
  | 'tool'
  | 'recipe'
  | 'record'
  | 'part'
  | 'outline'
  | 'zone'
  | 'stack'
  | 'layer'
  | 'group'
  | 'process'
  | 'step'
  | 'port'
  | 'load'
  | 'expect'
  | 'size'
  | 'let';

/** One line of the outline of a file. */
export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly sort: SymbolSort;
  readonly range: Range;
  /** the name, or the first word of the line */
  readonly selection: Range;
  readonly children: readonly OutlineSymbol[];
}

/** What an outline says of one node; undefined: the node has no line of its own. */
interface Said {
  readonly sort: SymbolSort;
  readonly name?: string;
  readonly detail?: string;
  readonly inside?: readonly AstNode[];
}

/** The outline of a file: entries, and in a recipe its part, layers, steps, loads and sizes in the order of the lines. */
export function outlineOf(book: ast.Book): OutlineSymbol[] {
  return symbolsOf(book.entries);
}

function symbolsOf(nodes: readonly AstNode[]): OutlineSymbol[] {
  const symbols: OutlineSymbol[] = [];
  for (const node of nodes) {
    const said = say(node);
    const range = nodeRange(node);
    if (said === undefined || range === undefined) continue;
    symbols.push({
      name: oneLine(said.name ?? '') || headText(node) || said.sort,
      detail: oneLine(said.detail ?? ''),
      sort: said.sort,
      range,
      selection: nameRange(node) ?? { start: range.start, end: range.start },
      children: symbolsOf(said.inside ?? []),
    });
  }
  return symbols;
}

function say(node: AstNode): Said | undefined {
  const teller = tellers[node.$type];
  return teller?.(node);
}

const tellers: Readonly<Record<string, (node: AstNode) => Said | undefined>> = {
  [ast.Shop.$type]: tell<ast.Shop>((shop) => ({ sort: 'shop', name: shop.title ?? 'shop', detail: 'shop' })),
  [ast.Material.$type]: tell<ast.Material>((material) => ({
    sort: 'material',
    name: material.name ?? material.kind,
    detail: words(material.kind, like(material), material.title),
  })),
  [ast.Tool.$type]: tell<ast.Tool>((tool) => ({
    sort: 'tool',
    name: tool.name ?? 'tool',
    detail: words('tool', like(tool), tool.title),
  })),
  [ast.Recipe.$type]: tell<ast.Recipe>((recipe) => ({
    sort: 'recipe',
    name: recipe.name ?? 'recipe',
    detail: words('recipe', like(recipe), recipe.title),
    inside: recipe.items,
  })),
  [ast.BuildRecord.$type]: tell<ast.BuildRecord>((record) => ({
    sort: 'record',
    name: words(record.recipe?.$refText, record.size?.$refText, record.date) || 'record',
    detail: words('record', record.title),
  })),
  [ast.Let.$type]: tell<ast.Let>((line) => ({
    sort: 'let',
    name: line.name ?? 'let',
    detail: headText(line).replace(/^let \S+ ?/, ''),
  })),
  [ast.PartBlock.$type]: tell<ast.PartBlock>((part) => ({ sort: 'part', name: 'part', inside: part.items })),
  [ast.OutlineLine.$type]: tell<ast.OutlineLine>((line) => ({ sort: 'outline', name: 'outline', detail: shape(line) })),
  [ast.CutoutLine.$type]: tell<ast.CutoutLine>((line) => ({ sort: 'outline', name: 'cutout', detail: shape(line) })),
  [ast.Zone.$type]: tell<ast.Zone>((zone) => ({
    sort: 'zone',
    name: zone.name ?? 'zone',
    detail: words('zone', shape(zone)),
  })),
  [ast.Stack.$type]: tell<ast.Stack>((stack) => ({
    sort: 'stack',
    name: 'stack',
    detail: stack.tool?.$refText ?? stack.caul?.$refText,
    inside: stack.layers,
  })),
  [ast.CoatLayer.$type]: tell<ast.CoatLayer>(layer),
  [ast.ClothLayer.$type]: tell<ast.ClothLayer>(layer),
  [ast.CoreLayer.$type]: tell<ast.CoreLayer>(layer),
  [ast.Repeat.$type]: tell<ast.Repeat>((repeat) => ({ sort: 'group', inside: repeat.layers })),
  [ast.Mirror.$type]: tell<ast.Mirror>(() => ({ sort: 'group' })),
  [ast.Process.$type]: tell<ast.Process>((process) => ({
    sort: 'process',
    name: 'process',
    detail: words(
      process.kind,
      process.base && `like ${process.base.$refText}`,
      process.resin && `with ${process.resin.$refText}`,
    ),
    inside: process.steps,
  })),
  [ast.Port.$type]: tell<ast.Port>((port) => ({
    sort: 'port',
    name: port.name ?? port.verb,
    detail: words(port.verb, port.material?.$refText),
  })),
  [ast.Lay.$type]: tell<ast.Lay>(() => ({ sort: 'step' })),
  [ast.Check.$type]: tell<ast.Check>(() => ({ sort: 'step' })),
  [ast.Step.$type]: tell<ast.Step>((step) => ({ sort: 'step', inside: step.steps })),
  [ast.Load.$type]: tell<ast.Load>((load) => ({ sort: 'load', name: load.name ?? 'load', detail: 'load' })),
  [ast.Expect.$type]: tell<ast.Expect>(() => ({ sort: 'expect' })),
  [ast.Size.$type]: tell<ast.Size>((size) => ({ sort: 'size', name: size.name ?? 'size', detail: 'size' })),
};

/** The table is keyed by node type, so what arrives is of that type. */
function tell<T extends AstNode>(teller: (node: T) => Said): (node: AstNode) => Said {
  return teller as (node: AstNode) => Said;
}

function layer(node: ast.CoatLayer | ast.ClothLayer | ast.CoreLayer): Said {
  return { sort: 'layer', name: node.name ?? node.kind, detail: words(node.kind, node.material?.$refText) };
}

function like(entry: ast.Material | ast.Tool | ast.Recipe): string | undefined {
  return entry.base === undefined ? undefined : `like ${entry.base.$refText}`;
}

function shape(line: ast.OutlineLine | ast.CutoutLine | ast.Zone): string {
  return line.shape === undefined ? '' : headText(line.shape);
}

function nameRange(node: AstNode): Range | undefined {
  return (
    (
      GrammarUtils.findNodeForProperty(node.$cstNode, 'name') ??
      GrammarUtils.findNodeForProperty(node.$cstNode, 'recipe')
    )?.range ?? firstWord(node)
  );
}

function firstWord(node: AstNode): Range | undefined {
  const start = node.$cstNode?.range.start;
  const word = headText(node).split(' ')[0] ?? '';
  return start === undefined
    ? undefined
    : { start, end: { line: start.line, character: start.character + word.length } };
}

const words = (...all: readonly (string | undefined)[]): string =>
  all.filter((word) => word !== undefined && word !== '').join(' ');

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

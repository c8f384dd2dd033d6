import { text } from '../../calc/figure/figure.ts';
import type { Expectation, Load, Process, Recipe } from '../../calc/model/index.ts';
import type {
  Fact,
  Junk,
  Let,
  OutlineLine,
  RecipeItem,
  Recipe as RecipeNode,
  Size,
  SizeItem,
} from '../grammar/generated/ast.ts';
import { isRecipe } from '../grammar/generated/ast.ts';
import { longestLikeness } from '../grammar/limits.ts';
import { nearestWords } from '../words/nearest.ts';
import { countOf, wordsOf } from './arguments.ts';
import { lowerExpect, lowerLoad } from './asks.ts';
import { reportBareBlock } from './bare-block.ts';
import { type FactReader, firstRead, incomplete, lowerFacts, type Mutable, put } from './facts.ts';
import { Lets } from './lets.ts';
import type { Lowering } from './lowering.ts';
import { Overrides } from './overrides.ts';
import { lowerPart } from './part.ts';
import { headSpan, nodeSpan, propertySpan } from './places.ts';
import { lowerProcess } from './process.ts';
import { lowerRemarks } from './remarks.ts';
import { lowerStack } from './stack.ts';
import { reportStraysOfHead } from './stray.ts';
import { reportUnknownLine } from './unknown.ts';
import { reportSameNames, reportUnknownEnds, reportUnknownLines } from './unknown-names.ts';

type ProcessItem = Extract<RecipeItem, { $type: 'Process' }>;
type Head = { revision?: number; quantity?: number; handed?: readonly string[] };
type HeadReader = FactReader<Head>;

const revision: HeadReader = (low, line, into) => {
  const count = countOf(low, line.points[0] && firstRead(line.points[0]));
  if (count === undefined && line.points.length === 0) incomplete(low, line, 'revision 4');
  put(into, 'revision', count);
};

const quantity: HeadReader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  const count = countOf(low, read);
  if (read === undefined) incomplete(low, line, 'quantity 12');
  else if (count === 0) low.problem('unit/suspicious', read.node, 'an order is for one part or more');
  else put(into, 'quantity', count);
};

/** `handed port, starboard` */
const handed: HeadReader = (low, line, into) => {
  const names = line.points.flatMap((point) => wordsOf(point.values));
  if (names.length === 2) put(into, 'handed', names);
  else incomplete(low, line, 'handed port, starboard');
};

const heads: Readonly<Record<string, HeadReader>> = { revision, quantity, handed };

/** A recipe for each size: the one as written first. All share one set of places and problems. */
export interface LoweredRecipes {
  readonly recipes: readonly Recipe[];
}

export function lowerRecipe(low: Lowering, node: RecipeNode): LoweredRecipes {
  low.placeHead('', node);
  const name = node.name ?? '';
  if (node.name === undefined)
    low.problem('line/not-understood', headSpan(node), 'a recipe has a name: recipe sled_deck "Rescue sled deck" {');
  const sizes = node.items.filter((item) => item.$type === 'Size');
  const names = sizes.flatMap((size) => (size.name === undefined ? [] : [size.name]));
  for (const size of sizes) {
    reportStraysOfHead(low, size);
    if (size.name === undefined) low.problem('line/not-understood', headSpan(size), 'a size has a name: size short {');
  }
  const base = baseOf(low, node);
  const recipes = [lowerForSize(low, node, name, names, base, undefined)];
  sizes.forEach((size, i) => {
    low.placeHead(`sizes.${i}`, size);
    if (size.name !== undefined) recipes.push(lowerForSize(low, node, name, names, base, size));
  });
  return { recipes };
}

/** The recipe that this one is like, if it is a recipe and not itself. */
function baseOf(low: Lowering, node: RecipeNode): RecipeNode | undefined {
  if (node.base === undefined) return undefined;
  low.place('like', propertySpan(node, 'base'));
  const seen = new Set<RecipeNode>([node]);
  for (let at: RecipeNode | undefined = node; at?.base !== undefined; ) {
    const next: unknown = at.base.ref;
    if (!isRecipe(next)) break;
    if (seen.has(next)) {
      low.problem(
        'name/cyclic',
        propertySpan(node, 'base'),
        seen.size === 1
          ? text('{name} is like itself', { name: node.name ?? '' })
          : text('{name} is like itself, over {count} recipes', { name: node.name ?? '', count: seen.size }),
      );
      return undefined;
    }
    seen.add(next);
    at = next;
    if (seen.size > longestLikeness) {
      low.problem(
        'name/cyclic',
        propertySpan(node, 'base'),
        text(
          '{name} is like another recipe, and that like another, over more than {most}: no chain so long is followed',
          { name: node.name ?? '', most: longestLikeness },
        ),
      );
      return undefined;
    }
  }
  const base: unknown = node.base.ref;
  return isRecipe(base) ? base : undefined;
}

/** Lines of the base, then of the recipe itself, then of the size: what is named again replaces what came before. */
function lowerForSize(
  low: Lowering,
  node: RecipeNode,
  name: string,
  sizes: readonly string[],
  base: RecipeNode | undefined,
  size: Size | undefined,
): Recipe {
  const inherited = base === undefined ? [] : linesOf(base);
  const own = node.items;
  const sized: readonly SizeItem[] = size?.items ?? [];
  const all = [...inherited, ...own, ...sized];
  low.lets = new Lets(
    low,
    all.filter((item): item is Let => item.$type === 'Let'),
  );
  const overrides = new Overrides(
    [...own, ...sized].filter((item) => item.$type === 'Change' || item.$type === 'Without'),
  );
  const head: Mutable<Head> = {};
  for (const [items, from] of [
    [inherited, 'like'],
    [own, ''],
    [sized, size?.name ?? ''],
  ] as const) {
    within(low, from === 'like' ? nodeSpan(node) : undefined, node, () =>
      lowerFacts(
        low,
        items.filter((item): item is Fact => item.$type === 'Fact' && !reportBareBlock(low, item)),
        heads,
        head,
        size === undefined ? 'a recipe' : 'a size',
      ),
    );
  }
  const sizeOutline = sized.find((item): item is OutlineLine => item.$type === 'OutlineLine');
  const recipe: Mutable<Recipe> = {
    entry: low.entry,
    name,
    sizes,
    quantity: head.quantity ?? 1,
    lets: {},
    loads: [],
    expects: [],
    ...(node.title === undefined ? {} : { title: node.title }),
    ...(size?.name === undefined ? {} : { size: size.name }),
    ...(node.base === undefined ? {} : { like: node.base.$refText }),
    ...(head.revision === undefined ? {} : { revision: head.revision }),
    ...(head.handed === undefined ? {} : { handed: head.handed }),
    ...lowerRemarks(
      low,
      '',
      node.remarks,
      own.filter((item) => item.$type === 'Note'),
      true,
    ),
  };
  recipe.lets = low.lets.all();
  readBlocks(low, node, recipe, inherited, own, overrides, sizeOutline);
  recipe.expects = [
    ...recipe.expects,
    ...sized
      .filter((item) => item.$type === 'Expect')
      .flatMap((item, i) => lowerExpect(low, item, `size.${size?.name ?? ''}.expects.${i}`) ?? []),
  ];
  for (const item of [...own, ...sized]) {
    if (item.$type === 'Junk') reportJunk(low, item);
    else if (item.$type === 'UnknownBlock') reportUnknownLine(low, item, 'recipe');
  }
  reportEmptyLets(low, [...own, ...sized]);
  reportUnknownEnds(low, recipe.part);
  reportUnknownLines(low, all, [...own, ...sized]);
  reportSameNames(low, own);
  reportSameNames(low, sized);
  low.lets = undefined;
  return recipe;
}

/** The lines of a recipe with those of its own base before them. */
function linesOf(recipe: RecipeNode, seen: ReadonlySet<RecipeNode> = new Set()): RecipeItem[] {
  const base: unknown = recipe.base?.ref;
  const before = isRecipe(base) && !seen.has(base) && base !== recipe ? linesOf(base, new Set([...seen, recipe])) : [];
  return [
    ...before,
    ...recipe.items.filter((item) => item.$type !== 'Size' && item.$type !== 'Junk' && item.$type !== 'UnknownBlock'),
  ];
}

function readBlocks(
  low: Lowering,
  node: RecipeNode,
  recipe: Mutable<Recipe>,
  inherited: readonly RecipeItem[],
  own: readonly RecipeItem[],
  overrides: Overrides,
  outline: OutlineLine | undefined,
): void {
  const loads: Load[] = [];
  const expects: Expectation[] = [];
  const read = (items: readonly RecipeItem[], prefix: string): void => {
    items.forEach((item, index) => {
      if ('strays' in item) reportStraysOfHead(low, item);
      switch (item.$type) {
        case 'PartBlock':
          recipe.part = lowerPart(low, item, `${prefix}part`, outline);
          break;
        case 'Stack':
          recipe.stack = lowerStack(low, item, `${prefix}stack`, overrides);
          break;
        case 'Process':
          recipe.process = lowerProcess(
            low,
            item,
            `${prefix}process`,
            overrides,
            processLike(low, item, `${prefix}process`, overrides, [recipe.name]),
          );
          break;
        case 'Load': {
          const load = lowerLoad(low, item, `${prefix}loads.${index}`);
          if (load !== undefined) {
            const same = loads.findIndex((l) => l.name === load.name);
            if (same >= 0 && prefix === '' && loads[same]?.path.startsWith('like.') === true) loads.splice(same, 1);
            loads.push(load);
          }
          break;
        }
        case 'Expect': {
          const expectation = lowerExpect(low, item, `${prefix}expects.${index}`);
          if (expectation !== undefined) expects.push(expectation);
          break;
        }
        case 'Let':
          low.place(`lets.${item.name ?? ''}`, item);
          break;
        case 'Change':
        case 'Without':
          checkChange(low, item.line?.$refText, item);
          break;
        default:
          break;
      }
    });
  };
  within(low, inherited.length > 0 ? nodeSpan(node) : undefined, node, () => read(inherited, 'like.'));
  read(own, '');
  recipe.loads = loads;
  recipe.expects = expects;
}

/**
 * `process infusion like house_infusion { ... }`: the process of another recipe, which may itself be like another one, with what
 * is changed of it here and in sizes. `seen` are the recipes on the way, so that a ring ends.
 */
function processLike(
  low: Lowering,
  item: ProcessItem,
  path: string,
  overrides: Overrides,
  seen: readonly (string | undefined)[],
): Process | undefined {
  const base: unknown = item.base?.ref;
  if (!isRecipe(base) || seen.includes(base.name)) return undefined;
  const process = linesOf(base).findLast((line) => line.$type === 'Process');
  if (process?.$type !== 'Process') {
    low.problem(
      'name/unknown',
      propertySpan(item, 'base'),
      text('{name} has no process that this one could be like', { name: base.name ?? '' }),
    );
    return undefined;
  }
  const changed = overrides.plus(item.steps.filter((line) => line.$type === 'Change' || line.$type === 'Without'));
  const before = low.inherited;
  low.inherited ??= propertySpan(item, 'base') ?? nodeSpan(item);
  const deeper = processLike(low, process, `like.${path}`, changed, [...seen, base.name]);
  const lowered = lowerProcess(low, process, `like.${path}`, changed, deeper);
  low.inherited = before;
  return lowered;
}

/** Lines of another recipe stand, for messages, where the likeness is written. */
function within(low: Lowering, inherited: ReturnType<typeof nodeSpan>, node: RecipeNode, work: () => void): void {
  const before = low.inherited;
  if (inherited !== undefined) low.inherited = propertySpan(node, 'base') ?? headSpan(node) ?? inherited;
  work();
  low.inherited = before;
}

function checkChange(
  low: Lowering,
  name: string | undefined,
  item: Extract<RecipeItem, { $type: 'Change' | 'Without' }>,
): void {
  if (name === undefined)
    low.problem(
      'line/not-understood',
      item,
      item.$type === 'Change'
        ? 'which line is changed? change outer, darts 16'
        : 'which line is left out? without keel',
    );
}

function reportEmptyLets(low: Lowering, items: readonly (RecipeItem | SizeItem)[]): void {
  for (const item of items) {
    if (item.$type === 'Let' && (item.name === undefined || item.value === undefined))
      low.problem('line/not-understood', item, 'a let has a name and a value: let landing = 25 mm');
  }
}

const begins = ['revision', 'quantity', 'handed', 'let', 'part', 'stack', 'process', 'load', 'expect', 'size', 'note'];

function reportJunk(low: Lowering, item: Junk): void {
  const near = nearestWords(item.head, begins);
  low.problem(
    'line/not-understood',
    item,
    text('this line begins with no word of a recipe: {words}', { words: (near.length > 0 ? near : begins).join(', ') }),
  );
}

import type { Bench } from '../../../calc/figure/index.ts';
import { isKnown } from '../../../calc/figure/index.ts';
import { onceFor } from '../../../calc/kept.ts';
import {
  type Argument,
  type BuildRecord,
  type Fact,
  type Layer,
  type Material,
  type Recipe,
  type StackItem,
  type Step,
  type Tool,
  UNKNOWN,
} from '../../../calc/model/index.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { type NameKind, senses, type Verb, verb } from '../../words/index.ts';

export type Namespace = 'material' | 'tool' | 'recipe' | 'layer' | 'zone' | 'port' | 'load' | 'size' | 'end' | 'let';

/** One place where a name is spoken of, and what it may be the name of. */
export interface Use {
  readonly name: string;
  readonly at: string;
  readonly wants: readonly Namespace[];
  /** kinds of material that may stand here: entry kinds, or kinds of consumable */
  readonly kinds: readonly string[] | undefined;
  /** it may as well name something that no entry describes: a bought piece */
  readonly free: boolean;
}

// What is spoken of is put into one list: it is gathered for every recipe, and lists of lists were the dearest part of it.

/** `clause`: where it stands in its line, at `path`. Most lines name nothing there, and then no place is made. */
function one(into: Use[], name: string | undefined, wants: readonly Namespace[], path: string, clause = ''): void {
  if (name !== undefined) into.push({ name, at: path + clause, wants, kinds: undefined, free: false });
}

function material(into: Use[], name: string | undefined, kinds: readonly string[], path: string, clause = ''): void {
  if (name !== undefined) into.push({ name, at: path + clause, wants: MATERIAL, kinds, free: false });
}

const MATERIAL = ['material'] as const;
const TOOL = ['tool'] as const;
const TOOL_OR_MATERIAL = ['tool', 'material'] as const;
const RECIPE = ['recipe'] as const;
const LOAD = ['load'] as const;
const LAYER = ['layer'] as const;
const ZONE_OR_LAYER = ['zone', 'layer'] as const;

const CLOTH = ['fabric', 'prepreg'];
/** What a kind of layer is made of. */
const MADE_OF: Readonly<Record<Layer['kind'], readonly string[]>> = {
  ply: CLOTH,
  strip: CLOTH,
  patch: CLOTH,
  core: ['core'],
  insert: ['core', 'fabric', 'prepreg', 'consumable', 'paste'],
  coat: ['gelcoat', 'resin', 'paste', 'consumable'],
};

/** Lines of a stack, those of groups with them. */
export function linesOf(items: readonly StackItem[], into: StackItem[] = []): readonly StackItem[] {
  for (const item of items) {
    into.push(item);
    if (item.kind === 'repeat') linesOf(item.items, into);
  }
  return into;
}

export function layerLines(recipe: Recipe): readonly Layer[] {
  const layers: Layer[] = [];
  for (const item of linesOf(recipe.stack?.items ?? []))
    if (item.kind !== 'repeat' && item.kind !== 'mirror') layers.push(item);
  return layers;
}

/** Names that stand inside a recipe, by what they name; copies (`mat.2`) count as layers. */
export function localNames(
  recipe: Recipe,
  bench: Bench,
): Readonly<Record<'layer' | 'zone' | 'port' | 'load' | 'size' | 'end' | 'let', readonly string[]>> {
  const laid = bench.ask(laidStack);
  const { part, process } = recipe;
  const layer: string[] = [];
  for (const { name } of layerLines(recipe)) layer.push(name);
  if (isKnown(laid)) for (const { name } of laid.value.layers) layer.push(name);
  const port: string[] = [];
  if (process !== undefined) for (const { name } of allSteps(process.steps)) if (name !== undefined) port.push(name);
  return {
    layer,
    zone: part?.zones.map((zone) => zone.name) ?? [],
    port,
    load: recipe.loads.map((load) => load.name),
    size: recipe.sizes,
    end: part?.ends === undefined ? [] : [part.ends.from, part.ends.to],
    let: Object.keys(recipe.lets),
  };
}

/**
 * Everything that a recipe speaks of by name, in order of the text; several rules go through them. Ends of the part are told when the
 * text is read.
 */
export const usesInRecipe = onceFor((recipe: Recipe): readonly Use[] => {
  const { stack, process } = recipe;
  const into: Use[] = [];
  one(into, recipe.like, RECIPE, 'like');
  if (stack !== undefined) {
    one(into, stack.tool, stack.from === 'caul' ? TOOL_OR_MATERIAL : TOOL, stack.path, '.tool');
    usesOfItems(stack.items, into);
  }
  if (process !== undefined) {
    material(into, process.resin, RESIN, process.path, '.resin');
    for (const step of allSteps(process.steps)) usesOfStep(step, into);
  }
  for (const { path, test } of recipe.expects) {
    one(into, test.under, LOAD, path, '.test.under');
    one(into, test.on, LAYER, path);
    if (typeof test.at === 'string' && test.at !== 'middle') one(into, test.at, ZONE_OR_LAYER, path);
  }
  return into;
});

const RESIN = ['resin'];
const LIQUID = ['resin', 'gelcoat', 'paste'];

function usesOfItems(items: readonly StackItem[], into: Use[]): void {
  for (const item of items) {
    if (item.kind === 'mirror') one(into, item.about, LAYER, item.path, '.about');
    else if (item.kind === 'repeat') usesOfItems(item.items, into);
    else usesOfLayer(item, into);
  }
}

function usesOfLayer(layer: Layer, into: Use[]): void {
  const { extent, path } = layer;
  material(into, layer.material, MADE_OF[layer.kind], path, '.material');
  material(into, layer.wetResin, LIQUID, path, '.resin');
  one(into, layer.bedded?.material, MATERIAL, path, '.bedded');
  if (extent.kind === 'wrap') one(into, extent.target, LAYER, path, '.wrap.target');
  if (extent.kind === 'zone') one(into, extent.zone, ZONE_OR_LAYER, path, '.over');
  if (layer.grooves !== undefined) for (const groove of layer.grooves) one(into, groove.strip, LAYER, groove.path);
}

/** What stands behind a verb, or behind a connective of it, by a name that something else bears. */
interface TakesName {
  readonly after: string | undefined;
  readonly wants: readonly Namespace[];
  readonly free: boolean;
}

const takesOfNames = onceFor((of: Verb): readonly TakesName[] =>
  (of.takes ?? []).flatMap(({ names, after }) => {
    if (names === undefined || names.includes('own')) return [];
    const wants = new Set(names.filter((kind) => kind !== 'bought piece').map(namespaceOf));
    return [{ after, wants: [...wants], free: names.includes('bought piece') }];
  }),
);

/** Words of a step that the table of verbs takes for names; one that is a word of the notation is none. */
function usesOfStep(step: Step, into: Use[]): void {
  if (step.lay !== undefined) {
    const { first, last, resin } = step.lay;
    one(into, first, LAYER, step.path, '.first');
    one(into, last, LAYER, step.path, '.last');
    material(into, resin, LIQUID, step.path, '.resin');
    return;
  }
  const known = verb(step.verb);
  const kinds = known?.material;
  if (step.material !== undefined) {
    const wants = kinds?.includes('tool') === true ? TOOL_OR_MATERIAL : MATERIAL;
    into.push({ name: step.material, at: `${step.path}.material`, wants, kinds, free: false });
  }
  if (known?.takes === undefined) return;
  for (const { after, wants, free } of takesOfNames(known)) {
    const list = after === undefined ? step.arguments : argumentsBehind(step, after);
    const index = firstWord(list);
    const word = list[index];
    if (word?.kind !== 'word' || senses(word.word).length > 0) continue;
    const at = after === undefined ? `${step.path}.arguments.${index}` : step.path;
    into.push({ name: word.word, at, wants, kinds: undefined, free });
  }
}

function argumentsBehind(step: Step, connective: string): readonly Argument[] {
  for (const phrase of step.phrases) if (phrase.word === connective) return phrase.arguments;
  return nothing;
}

const nothing: readonly Argument[] = [];

function firstWord(list: readonly Argument[]): number {
  for (let i = 0; i < list.length; i++) if (list[i]?.kind === 'word') return i;
  return -1;
}

function namespaceOf(kind: NameKind): Namespace {
  if (kind === 'feed' || kind === 'vent') return 'port';
  if (
    kind === 'tool' ||
    kind === 'recipe' ||
    kind === 'layer' ||
    kind === 'zone' ||
    kind === 'load' ||
    kind === 'size' ||
    kind === 'end' ||
    kind === 'let'
  )
    return kind;
  return 'material';
}

/** The other materials that an entry names, where it says so itself. */
export function usesInMaterial(entry: Material): Use[] {
  const into: Use[] = [];
  const own = (fact: Fact<string> | undefined, kinds: readonly string[]): void => {
    if (fact !== undefined && fact.value !== UNKNOWN) material(into, fact.value, kinds, fact.at.path);
  };
  const { catalyst } = entry;
  if (entry.like !== 'stock') one(into, entry.like, MATERIAL, 'like');
  own(entry.fibre, ['fibre']);
  own(entry.madeFrom, LIQUID);
  if (catalyst !== undefined && catalyst.value !== UNKNOWN)
    material(into, catalyst.value.material, ['catalyst'], catalyst.at.path);
  for (const fact of entry.fillers ?? [])
    if (fact.value !== UNKNOWN) one(into, fact.value.material, MATERIAL, fact.at.path);
  return into;
}

export function usesInRecord(record: BuildRecord): Use[] {
  const into: Use[] = [];
  one(into, record.recipe, RECIPE, 'recipe');
  one(into, record.size, ['size'], 'size');
  for (const lot of record.lots) one(into, lot.material, MATERIAL, lot.path, '.material');
  for (const { key, words, path } of record.readings) if (key === 'out') one(into, words[0], MATERIAL, path);
  return into;
}

/** The other tool that a tool is like. */
export function usesInTool({ like }: Tool): Use[] {
  const into: Use[] = [];
  if (like !== 'stock') one(into, like, TOOL, 'like');
  return into;
}

import type { Bench } from '../../../calc/figure/index.ts';
import { isKnown } from '../../../calc/figure/index.ts';
import { onceFor } from '../../../calc/kept.ts';
import {
  type BuildRecord,
  type Fact,
  type Layer,
  type Material,
  type Recipe,
  type StackItem,
  type Step,
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
  readonly kinds?: readonly string[];
  /** it may as well name something that no entry describes: a bought piece */
  readonly free?: true;
}

// What is spoken of is put into one list: it is gathered for every recipe, and lists of lists were the dearest part of it.

function one(into: Use[], name: string | undefined, at: string, wants: readonly Namespace[]): void {
  if (name !== undefined) into.push({ name, at, wants });
}

function material(into: Use[], name: string | undefined, at: string, kinds: readonly string[]): void {
  if (name !== undefined) into.push({ name, at, wants: MATERIAL, kinds });
}

const MATERIAL = ['material'] as const;
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

export const layerLines = (recipe: Recipe): readonly Layer[] =>
  linesOf(recipe.stack?.items ?? []).filter((item): item is Layer => item.kind !== 'repeat' && item.kind !== 'mirror');

/** Names that stand inside a recipe, by what they name; copies (`mat.2`) count as layers. */
export function localNames(
  recipe: Recipe,
  bench: Bench,
): Readonly<Record<'layer' | 'zone' | 'port' | 'load' | 'size' | 'end' | 'let', readonly string[]>> {
  const laid = bench.ask(laidStack);
  const copies = isKnown(laid) ? laid.value.layers.map((layer) => layer.name) : [];
  const { part } = recipe;
  return {
    layer: [...layerLines(recipe).map((layer) => layer.name), ...copies],
    zone: part?.zones.map((zone) => zone.name) ?? [],
    port: allSteps(recipe.process?.steps ?? []).flatMap((step) => step.name ?? []),
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
  one(into, recipe.like, 'like', ['recipe']);
  if (stack !== undefined)
    one(into, stack.tool, `${stack.path}.tool`, stack.from === 'caul' ? ['tool', 'material'] : ['tool']);
  for (const item of linesOf(stack?.items ?? [])) {
    if (item.kind === 'mirror') one(into, item.about, `${item.path}.about`, LAYER);
    else if (item.kind !== 'repeat') usesOfLayer(item, into);
  }
  if (process !== undefined) material(into, process.resin, `${process.path}.resin`, RESIN);
  for (const step of allSteps(process?.steps ?? [])) usesOfStep(step, into);
  for (const { path, test } of recipe.expects) {
    one(into, test.under, `${path}.test.under`, ['load']);
    one(into, test.on, path, LAYER);
    if (typeof test.at === 'string' && test.at !== 'middle') one(into, test.at, path, ZONE_OR_LAYER);
  }
  return into;
});

const RESIN = ['resin'];
const LIQUID = ['resin', 'gelcoat', 'paste'];

function usesOfLayer(layer: Layer, into: Use[]): void {
  const { extent, path } = layer;
  material(into, layer.material, `${path}.material`, MADE_OF[layer.kind]);
  material(into, layer.wetResin, `${path}.resin`, LIQUID);
  one(into, layer.bedded?.material, `${path}.bedded`, MATERIAL);
  if (extent.kind === 'wrap') one(into, extent.target, `${path}.wrap.target`, LAYER);
  if (extent.kind === 'zone') one(into, extent.zone, `${path}.over`, ZONE_OR_LAYER);
  for (const groove of layer.grooves ?? []) one(into, groove.strip, groove.path, LAYER);
}

const takesKept = new Map<Verb, NonNullable<Verb['takes']>>();

/** What stands behind a verb by a name that something else bears. */
function takesOfNames(of: Verb): NonNullable<Verb['takes']> {
  const kept =
    takesKept.get(of) ?? of.takes?.filter(({ names }) => names !== undefined && !names.includes('own')) ?? [];
  takesKept.set(of, kept);
  return kept;
}

/** Words of a step that the table of verbs takes for names; one that is a word of the notation is none. */
function usesOfStep(step: Step, into: Use[]): void {
  if (step.lay !== undefined) {
    const { first, last, resin } = step.lay;
    one(into, first, `${step.path}.first`, LAYER);
    one(into, last, `${step.path}.last`, LAYER);
    material(into, resin, `${step.path}.resin`, LIQUID);
    return;
  }
  const known = verb(step.verb);
  const kinds = known?.material;
  if (step.material !== undefined) {
    const wants = kinds?.includes('tool') === true ? (['tool', 'material'] as const) : MATERIAL;
    const at = `${step.path}.material`;
    into.push(kinds === undefined ? { name: step.material, at, wants } : { name: step.material, at, wants, kinds });
  }
  for (const take of known === undefined ? [] : takesOfNames(known)) {
    const list =
      take.after === undefined
        ? step.arguments
        : (step.phrases.find((phrase) => phrase.word === take.after)?.arguments ?? []);
    const index = list.findIndex(({ kind }) => kind === 'word');
    const word = list[index];
    if (word?.kind !== 'word' || senses(word.word).length > 0) continue;
    const names = take.names ?? [];
    const at = take.after === undefined ? `${step.path}.arguments.${index}` : step.path;
    const wants = [...new Set(names.filter((kind) => kind !== 'bought piece').map(namespaceOf))];
    into.push(
      names.includes('bought piece') ? { name: word.word, at, wants, free: true } : { name: word.word, at, wants },
    );
  }
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
    if (fact !== undefined && fact.value !== UNKNOWN) material(into, fact.value, fact.at.path, kinds);
  };
  const { catalyst } = entry;
  if (entry.like !== 'stock') one(into, entry.like, 'like', MATERIAL);
  own(entry.fibre, ['fibre']);
  own(entry.madeFrom, LIQUID);
  if (catalyst !== undefined && catalyst.value !== UNKNOWN)
    material(into, catalyst.value.material, catalyst.at.path, ['catalyst']);
  for (const fact of entry.fillers ?? [])
    if (fact.value !== UNKNOWN) one(into, fact.value.material, fact.at.path, MATERIAL);
  return into;
}

export function usesInRecord(record: BuildRecord): Use[] {
  const into: Use[] = [];
  one(into, record.recipe, 'recipe', ['recipe']);
  one(into, record.size, 'size', ['size']);
  for (const lot of record.lots) one(into, lot.material, `${lot.path}.material`, MATERIAL);
  for (const { key, words, path } of record.readings) if (key === 'out') one(into, words[0], path, MATERIAL);
  return into;
}

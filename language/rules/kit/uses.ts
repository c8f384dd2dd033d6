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

const one = (name: string | undefined, at: string, ...wants: readonly Namespace[]): Use[] =>
  name === undefined ? [] : [{ name, at, wants }];

const material = (name: string | undefined, at: string, kinds: readonly string[]): Use[] =>
  name === undefined ? [] : [{ name, at, wants: ['material'], kinds }];

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
  return [
    ...one(recipe.like, 'like', 'recipe'),
    ...(stack === undefined
      ? []
      : one(
          stack.tool,
          `${stack.path}.tool`,
          ...(stack.from === 'caul' ? (['tool', 'material'] as const) : (['tool'] as const)),
        )),
    ...linesOf(stack?.items ?? []).flatMap((item) =>
      item.kind === 'mirror'
        ? one(item.about, `${item.path}.about`, 'layer')
        : item.kind === 'repeat'
          ? []
          : usesOfLayer(item),
    ),
    ...(process === undefined ? [] : material(process.resin, `${process.path}.resin`, ['resin'])),
    ...allSteps(process?.steps ?? []).flatMap(usesOfStep),
    ...recipe.expects.flatMap(({ path, test }) => [
      ...one(test.under, `${path}.test.under`, 'load'),
      ...one(test.on, path, 'layer'),
      ...(typeof test.at === 'string' && test.at !== 'middle' ? one(test.at, path, 'zone', 'layer') : []),
    ]),
  ];
});

function usesOfLayer(layer: Layer): Use[] {
  const { extent, path } = layer;
  return [
    ...material(layer.material, `${path}.material`, MADE_OF[layer.kind]),
    ...material(layer.wetResin, `${path}.resin`, ['resin', 'gelcoat', 'paste']),
    ...one(layer.bedded?.material, `${path}.bedded`, 'material'),
    ...(extent.kind === 'wrap' ? one(extent.target, `${path}.wrap.target`, 'layer') : []),
    ...(extent.kind === 'zone' ? one(extent.zone, `${path}.over`, 'zone', 'layer') : []),
    ...(layer.grooves ?? []).flatMap((groove) => one(groove.strip, groove.path, 'layer')),
  ];
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
function usesOfStep(step: Step): Use[] {
  const known = verb(step.verb);
  const made: Use[] =
    step.material === undefined
      ? []
      : [
          {
            name: step.material,
            at: `${step.path}.material`,
            wants: known?.material?.includes('tool') === true ? ['tool', 'material'] : ['material'],
            ...(known?.material === undefined ? {} : { kinds: known.material }),
          },
        ];
  if (step.lay !== undefined) {
    const { first, last, resin } = step.lay;
    return [
      ...one(first, `${step.path}.first`, 'layer'),
      ...one(last, `${step.path}.last`, 'layer'),
      ...material(resin, `${step.path}.resin`, ['resin', 'gelcoat', 'paste']),
    ];
  }
  const named = known === undefined ? [] : takesOfNames(known);
  if (named.length === 0) return made;
  return [
    ...made,
    ...named.flatMap((take) => {
      const list =
        take.after === undefined
          ? step.arguments
          : (step.phrases.find((phrase) => phrase.word === take.after)?.arguments ?? []);
      const index = list.findIndex(({ kind }) => kind === 'word');
      const word = list[index];
      if (word?.kind !== 'word' || senses(word.word).length > 0) return [];
      const names = take.names ?? [];
      const uses = one(
        word.word,
        take.after === undefined ? `${step.path}.arguments.${index}` : step.path,
        ...new Set(names.filter((kind) => kind !== 'bought piece').map(namespaceOf)),
      );
      return names.includes('bought piece') ? uses.map((use) => ({ ...use, free: true as const })) : uses;
    }),
  ];
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
  const own = (fact: Fact<string> | undefined, kinds: readonly string[]): Use[] =>
    fact === undefined || fact.value === UNKNOWN ? [] : material(fact.value, fact.at.path, kinds);
  const catalyst = entry.catalyst;
  return [
    ...(entry.like === 'stock' ? [] : one(entry.like, 'like', 'material')),
    ...own(entry.fibre, ['fibre']),
    ...own(entry.madeFrom, ['resin', 'gelcoat', 'paste']),
    ...(catalyst === undefined || catalyst.value === UNKNOWN
      ? []
      : material(catalyst.value.material, catalyst.at.path, ['catalyst'])),
    ...(entry.fillers ?? []).flatMap((fact) =>
      fact.value === UNKNOWN ? [] : one(fact.value.material, fact.at.path, 'material'),
    ),
  ];
}

export function usesInRecord(record: BuildRecord): Use[] {
  return [
    ...one(record.recipe, 'recipe', 'recipe'),
    ...one(record.size, 'size', 'size'),
    ...record.lots.flatMap((lot) => one(lot.material, `${lot.path}.material`, 'material')),
    ...record.readings.flatMap(({ key, words, path }) => (key === 'out' ? one(words[0], path, 'material') : [])),
  ];
}

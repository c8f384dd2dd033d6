// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the places to fill of a snippet are written so
import type { Argument, NameKind, Word } from '../../words/index.ts';
import { wordCard } from '../hover/markdown.ts';
import { translated } from '../translation.ts';
import { choiceOf, choicesOf, isVerb } from '../words.ts';
import type { CompletionSort } from './completion.ts';
import type { LocalName, MaterialName } from './names-port.ts';
import type { Scene } from './scene.ts';
import { unitsFor } from './units.ts';

const localKinds: ReadonlySet<NameKind> = new Set<NameKind>([
  'layer',
  'zone',
  'feed',
  'vent',
  'let',
  'load',
  'size',
  'end',
]);
const usualAngles = ['0 deg', '45 deg', '-45 deg', '90 deg'];
const plainNumbers: ReadonlySet<Argument['dimension']> = new Set([
  'count',
  'number',
  'ratio',
  'date',
  'text',
  'point',
  'shape',
  'word',
  'test',
  'name',
]);

export function offerWord(scene: Scene, word: Word, sort: CompletionSort = 'word'): void {
  scene.offers.add({
    label: word.word,
    sort,
    documentation: wordCard(word),
    detail: firstSentence(translated(word.meaning)),
  });
}

export const firstSentence = (text: string): string => /^.*?[.:](?=\s|$)/.exec(text)?.[0] ?? text;

/** What may stand where an argument of `owner` is expected. */
export function offerValue(scene: Scene, argument: Argument, owner: Word | undefined): void {
  if (argument.dimension === 'shape') {
    for (const shape of choicesOf('outline')) if (isShape(shape)) offerWord(scene, shape, 'value');
    return;
  }
  const words =
    argument.words ?? (argument.dimension === 'word' ? choicesOf(owner?.word ?? '').map((row) => row.word) : []);
  for (const word of words) offerChoice(scene, word, owner);
  if (argument.names !== undefined) offerNames(scene, argument.names, owner);
  if (argument.dimension === 'point') offerPoint(scene);
  if (argument.dimension === 'angle' && argument.after === 'at' && scene.place === 'stack') {
    for (const angle of usualAngles) scene.offers.add({ label: angle, sort: 'value' });
  }
  if (!plainNumbers.has(argument.dimension) && argument.basis === undefined && scene.entry === 'recipe')
    offerLocals(scene, 'let');
}

/** Words beside the shapes at `outline` (`corner`, `layer`, `id`) lead to what belongs to a shape. */
const isShape = (word: Word): boolean => !['corner', 'layer', 'id'].includes(word.word);

function offerChoice(scene: Scene, word: string, owner: Word | undefined): void {
  const row = choiceOf(owner?.word ?? '', word) ?? choiceOf('until', word) ?? choiceOf('when', word);
  if (row !== undefined) offerWord(scene, row, 'value');
  else scene.offers.add({ label: word, sort: 'value' });
}

function offerPoint(scene: Scene): void {
  scene.offers.add({
    label: '(x, y)',
    sort: 'value',
    insert: '(${1:0 mm}, ${2:0 mm})',
    snippet: true,
    filter: '(',
    detail: 'a point, from the middle of the outline',
  });
  if (scene.place === 'load') {
    scene.offers.add({ label: 'middle', sort: 'value', detail: 'the middle of the part' });
    offerLocals(scene, 'end');
  }
}

export function offerLink(scene: Scene, link: string): void {
  scene.offers.add({ label: link, sort: 'link' });
}

/** Units behind a number, with a space before them whether one is typed or not. Tells whether there are any. */
export function offerUnits(scene: Scene, argument: Argument, owner: Word | undefined): boolean {
  const { cursor, offers, names } = scene;
  const units = unitsFor(argument, owner, scene.entry, names.currency());
  for (const unit of units) {
    if (cursor.touched === undefined) offers.add({ label: unit, sort: 'unit' });
    else if (cursor.start < cursor.end) offers.add({ label: unit, sort: 'unit', insert: ` ${unit}`, filter: unit });
    else {
      const typed = `${cursor.touched} ${unit}`;
      offers.add({
        label: unit,
        sort: 'unit',
        insert: typed,
        filter: typed,
        start: cursor.start - cursor.touched.length,
      });
    }
  }
  return units.length > 0;
}

export function offerBasis(scene: Scene, argument: Argument, by: boolean): void {
  for (const basis of argument.basis ?? []) {
    if (!by) offerLink(scene, basis);
    else if (basis.startsWith('by ')) offerLink(scene, basis.slice(3));
  }
}

export function offerNames(scene: Scene, kinds: readonly NameKind[], owner: Word | undefined): void {
  for (const kind of kinds) {
    if (localKinds.has(kind)) offerLocals(scene, kind as LocalName['kind'], owner);
    else if (kind === 'tool')
      for (const tool of scene.names.tools()) scene.offers.add({ label: tool.name, sort: 'tool', detail: tool.title });
    else if (kind === 'recipe')
      for (const recipe of scene.names.recipes())
        scene.offers.add({ label: recipe.name, sort: 'recipe', detail: recipe.title });
  }
  const wanted = new Set<string>(kinds);
  const only =
    owner !== undefined && isVerb(owner) && owner.material !== undefined ? new Set(owner.material) : undefined;
  const fits = (material: MaterialName): boolean => {
    if (!wanted.has('material') && !wanted.has(material.kind)) return false;
    return (
      only === undefined ||
      material.kind !== 'consumable' ||
      (material.consumableKind !== undefined && only.has(material.consumableKind))
    );
  };
  const materials = scene.names.materials().filter(fits);
  // a record speaks of what its recipe is built of
  const used = scene.entry === 'record' ? scene.names.usedIn(scene.cursor.blocks[0]?.tokens[1]?.image ?? '') : [];
  for (const name of used) for (const material of materials) if (material.name === name) offerMaterial(scene, material);
  // what the shop keeps stands before the library
  for (const stock of [false, true])
    for (const material of materials) if (material.stock === stock) offerMaterial(scene, material);
}

function offerMaterial(scene: Scene, { name, kind, consumableKind, title, detail, stock }: MaterialName): void {
  const about = [detail ?? title ?? consumableKind ?? kind, stock ? 'stock' : '']
    .filter((text) => text !== '')
    .join(' · ');
  scene.offers.add({
    label: name,
    sort: 'material',
    detail: about,
    ...(title === undefined ? {} : { documentation: plainTitle(title) }),
  });
}

const plainTitle = (title: string): string => title.replace(/[\\`*_{}[\]<>#|]/g, (mark) => `\\${mark}`);

export function offerLocals(scene: Scene, kind: LocalName['kind'], owner?: Word): void {
  let names = scene.locals().filter((local) => local.kind === kind && local.name !== ownName(scene));
  if (kind === 'layer') names = layersThatFit(scene, names, owner);
  for (const local of names)
    scene.offers.add({
      label: local.name,
      sort: local.kind,
      ...(local.detail === undefined ? {} : { detail: local.detail }),
    });
}

/** A groove is for a strip; a run of layers goes upwards. */
function layersThatFit(scene: Scene, layers: readonly LocalName[], owner: Word | undefined): LocalName[] {
  if (owner?.word === 'groove') {
    const strips = layers.filter((layer) => layer.detail?.startsWith('strip') === true);
    return strips.length > 0 ? strips : [...layers];
  }
  const first = scene.before[1]?.image;
  if (owner?.word === 'lay' && scene.before.at(-1)?.image === 'to') {
    const from = layers.findIndex((layer) => layer.name === first);
    return layers.slice(from + 1);
  }
  return [...layers];
}

const named: ReadonlySet<string> = new Set([
  'ply',
  'strip',
  'patch',
  'core',
  'insert',
  'coat',
  'zone',
  'let',
  'feed',
  'vent',
]);
const ownName = ({ before }: Scene): string | undefined =>
  named.has(before[0]?.image ?? '') ? before[1]?.image : undefined;

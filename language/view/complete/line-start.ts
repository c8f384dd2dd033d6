import type { Word } from '../../words/index.ts';
import { verbs, wordAt } from '../../words/index.ts';
import { wordCard } from '../hover/markdown.ts';
import { headWord } from '../statements.ts';
import { translated } from '../translation.ts';
import { isStepPlace, isVerb, lineWords } from '../words.ts';
import { blockSnippet } from './blocks.ts';
import type { Scene } from './scene.ts';
import { firstSentence } from './values.ts';

/** Facts that are told once; the others (viscosity, gel, price, lot ...) are repeated for other conditions. */
const repeated: ReadonlySet<string> = new Set([
  'viscosity',
  'gel',
  'tg',
  'pot_life',
  'open',
  'recoat',
  'laminate',
  'price',
  'filler',
  'bends',
  'habit',
  'stores',
  'lot',
  'mixed',
  'batch',
  'barcol',
  'thickness',
  'step',
  'check',
  'photo',
  'log',
  'differs',
  'vacuum',
  'leak',
  'let',
  'load',
  'expect',
  'size',
  'change',
  'without',
  'zone',
  'cutout',
  'weight',
  'force',
  'pressure',
  'note',
  'cure',
  'postcure',
  'permeability',
  'resists',
  'shear',
]);
const once: ReadonlySet<string> = new Set(['part', 'stack', 'process']);

/** The words that may begin a line here: of the block, whole blocks, steps of the process; facts that are told already left out. */
export function offerLineStart(scene: Scene): void {
  const { place, cursor } = scene;
  const told = new Set(
    cursor.statements
      .filter((one) => one.blocks.at(-1) === cursor.blocks.at(-1) && one.tokens[0]?.startOffset !== undefined)
      .map(headWord),
  );
  const words = isStepPlace(place) ? stepsOf(scene) : lineWords(place);
  for (const word of words) {
    const again = repeated.has(word.word) || isVerb(word) || place === 'stack' || place === 'book';
    if (told.has(word.word) && (!again || once.has(word.word))) continue;
    offerLine(scene, word);
  }
  if (place === 'process') for (const word of ['change', 'without']) offerKnown(scene, word);
  if (place !== 'book') offerKnown(scene, 'note');
}

/** The steps of this kind of process, in the order in which a part is built; in a block those that belong there. */
function stepsOf({ place, cursor }: Scene): Word[] {
  const process = cursor.blocks.find((block) => headWord(block) === 'process');
  const kind = process?.tokens[1]?.image;
  const fits = verbs.filter((verb) => verb.at.includes(place));
  return [...fits.filter((verb) => kind === undefined || (verb.processes as readonly string[]).includes(kind))];
}

function offerLine(scene: Scene, word: Word): void {
  const { offers, place } = scene;
  const snippet = blockSnippet(word.word, place);
  const sort = snippet !== undefined ? 'block' : isVerb(word) ? 'verb' : 'word';
  const shown = {
    label: word.word,
    sort,
    detail: firstSentence(translated(word.meaning)),
    documentation: wordCard(word),
  } as const;
  if (snippet === undefined) offers.add(shown);
  else if (isVerb(word)) {
    // plain, and with its block
    offers.add({ ...shown, sort: 'verb' });
    offers.add({ ...shown, label: `${word.word} { }`, insert: snippet, snippet: true, filter: word.word });
  } else offers.add({ ...shown, insert: snippet, snippet: true });
}

function offerKnown(scene: Scene, text: string): void {
  const word = wordAt(text, scene.place);
  if (word !== undefined) offerLine(scene, word);
}

/** `leak` is followed by `test`: the second word of a step of two. */
export function offerSecondWords(scene: Scene): void {
  if (!isStepPlace(scene.place) || scene.before.length !== 1) return;
  const first = `${scene.before[0]?.image} `;
  for (const verb of verbs) {
    if (!verb.word.startsWith(first)) continue;
    scene.offers.add({
      label: verb.word.slice(first.length),
      sort: 'verb',
      detail: firstSentence(translated(verb.meaning)),
      documentation: wordCard(verb),
    });
  }
}

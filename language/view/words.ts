import { PLACES, type Place, type Verb, verb, verbs, type Word, wordAt, wordsAt } from '../words/index.ts';
import { headWord, type Statement } from './statements.ts';

const isPlace = (text: string): text is Place => (PLACES as readonly string[]).includes(text);
const stepBlocks: ReadonlySet<string> = new Set(['process', 'kit', 'infuse', 'cure', 'postcure']);
const inner: ReadonlySet<string> = new Set(['part', 'stack', 'load', 'size', ...stepBlocks]);

/** Where the lines of a block stand: the entry, or the block of a recipe. Undefined where the notation has no such block. */
export function placeInside(blocks: readonly Statement[]): Place | undefined {
  const entry = headWord(blocks[0]);
  if (blocks.length === 0) return 'book';
  if (blocks.length === 1) return isPlace(entry) ? entry : undefined;
  if (entry !== 'recipe') return undefined;
  const head = headWord(blocks[blocks.length - 1]);
  if (head === 'repeat') return 'stack';
  if (inner.has(head)) return head as Place;
  return blocks.some((block) => headWord(block) === 'process') ? 'process' : undefined;
}

export const isStepPlace = (place: Place): boolean => stepBlocks.has(place);

/** The words that may begin a line in a place: the example of such a word begins with it. */
export function lineWords(place: Place): Word[] {
  return wordsAt(place).filter((word) => word.example.startsWith(word.word));
}

/** The word that a line begins with, from its first words; a verb may be of two: `leak test`. */
export function headOf(place: Place, [first = '', second = '']: readonly string[]): Word | undefined {
  if (isStepPlace(place)) return verb(`${first} ${second}`) ?? verb(first) ?? wordAt(first, place);
  return wordAt(first, place);
}

const verbWords: ReadonlySet<string> = new Set(verbs.flatMap(({ word }) => word.split(' ', 1)));
/** A word that a step may begin with. */
export const isVerbWord = (word: string): boolean => verbWords.has(word);

export const isVerb = (word: Word): word is Verb => 'sheet' in word;

/** Where the clauses of a line stand that begins with this word. */
export function clausePlace(place: Place, head: string): Place {
  const layer = `clause of ${head}`;
  if (place === 'stack') return isPlace(layer) ? layer : 'clause of ply';
  if (isStepPlace(place)) return 'clause of step';
  return place === 'part' || head === 'outline' || head === 'cutout' ? 'clause of part' : 'clause of fact';
}

/** What one of a few words behind this word means. */
export function choiceOf(head: string, word: string): Word | undefined {
  const place = `value of ${head}`;
  return isPlace(place) ? wordsAt(place).find((row) => row.word === word) : undefined;
}

export function choicesOf(head: string): readonly Word[] {
  const place = `value of ${head}`;
  return isPlace(place) ? wordsAt(place) : [];
}

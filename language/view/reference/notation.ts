import { text } from '../../../calc/figure/figure.ts';
import { PLACES, type Place, type Word, wordsAt } from '../../words/index.ts';
import { say } from '../text.ts';
import { isVerb } from '../words.ts';
import { wordEntry } from './word-entry.ts';

/** All places with their words. A word that stands at several is explained at the first of them and named at the others. */
export function notationChapter(): string {
  const told = new Set<Word>();
  return PLACES.map((place) => section(place, told))
    .filter((text) => text !== '')
    .join('\n\n');
}

function section(place: Place, told: Set<Word>): string {
  const all = wordsAt(place).filter((word) => !isVerb(word));
  const fresh = all.filter((word) => !told.has(word));
  const again = all.filter((word) => told.has(word)).map(({ word }) => `\`${word}\``);
  for (const word of fresh) told.add(word);
  if (all.length === 0) return '';
  const lines = [
    ...fresh.map(wordEntry),
    ...(again.length === 0 ? [] : [`- ${say('As explained above: {words}.', { words: again.join(', ') })}`]),
  ];
  return `## ${heading(place)}\n\n${lines.join('\n')}`;
}

/** A place as a heading: `stack`, `clause of ply`, `value of edge`. */
const heading = (place: Place): string => {
  if (place === 'anywhere') return say('Anywhere');
  if (place === 'book') return say('Entries of a book');
  const [, kind, of] = /^(clause|value) of (\w+)$/.exec(place) ?? [];
  if (kind === 'clause') return say('Clauses of `{word}`', { word: of === 'fact' ? text('fact') : (of ?? '') });
  return kind === 'value'
    ? say('Words behind `{word}`', { word: of ?? '' })
    : say('Lines of `{word}`', { word: place });
};

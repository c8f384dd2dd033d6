import { PLACES, type Place, type Word, wordsAt } from '../../words/index.ts';
import { say } from '../text.ts';
import { isVerb } from '../words.ts';
import { placeHeading } from './place-heading.ts';
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
  return `## ${placeHeading(place)}\n\n${lines.join('\n')}`;
}

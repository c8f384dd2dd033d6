import { text } from '../../../calc/figure/figure.ts';
import type { Place } from '../../words/index.ts';
import { say } from '../text.ts';

/** Where a word may stand (`stack`, `clause of ply`, `value of edge`) as a heading. */
export const placeHeading = (place: Place): string => {
  if (place === 'anywhere') return say('Anywhere');
  if (place === 'book') return say('Entries of a book');
  const [, kind, of] = /^(clause|value) of (\w+)$/.exec(place) ?? [];
  if (kind === 'clause') return say('Clauses of `{word}`', { word: of === 'fact' ? text('fact') : (of ?? '') });
  return kind === 'value'
    ? say('Words behind `{word}`', { word: of ?? '' })
    : say('Lines of `{word}`', { word: place });
};

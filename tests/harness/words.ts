import type { Words } from '../../calc/figure/figure.ts';
import { sayText } from '../../language/view/text.ts';
import { type Place, wordsAt } from '../../language/words/index.ts';

/** Words as they are shown in English, SI. */
export const inWords = (words: Words): string => sayText(words);

/** The kinds of materials, as places where words stand. */
export const materialPlaces: readonly Place[] = [
  'fibre',
  'fabric',
  'prepreg',
  'resin',
  'gelcoat',
  'catalyst',
  'paste',
  'core',
  'consumable',
];

/** All words that may stand at some places. */
export const wordsIn = (places: readonly Place[]): Set<string> =>
  new Set(places.flatMap((place) => wordsAt(place).map((word) => word.word)));

import { words } from '../words/index.ts';

/** A whole line that begins with a word, for messages; entries and blocks show their first line. */
export function exampleOf(headWord: string): string | undefined {
  const found = words.find(
    (row) =>
      row.word === headWord &&
      row.at.some((place) => !place.startsWith('clause') && !place.startsWith('value') && place !== 'anywhere'),
  );
  return found?.example.split('\n')[0];
}

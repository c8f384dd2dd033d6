import { editDistance } from '../../calc/quantity/nearest.ts';

/** The words that somebody may have meant: spelled alike, or beginning alike; best first, at most `most`. */
export function nearestWords(typed: string, words: Iterable<string>, most = 2): string[] {
  const limit = Math.max(1, Math.floor(typed.length / 3));
  const scored: { word: string; distance: number }[] = [];
  for (const word of new Set(words)) {
    if (word === typed || Math.abs(word.length - typed.length) > limit + 3) continue;
    const distance =
      typed.length >= 3 && word.startsWith(typed) ? 0.5 : editDistance(typed.toLowerCase(), word.toLowerCase());
    if (distance <= limit) scored.push({ word, distance });
  }
  return scored
    .sort((a, b) => a.distance - b.distance || a.word.localeCompare(b.word, 'en'))
    .slice(0, most)
    .map((s) => s.word);
}

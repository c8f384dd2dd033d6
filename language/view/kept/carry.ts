import type { CodeLine } from './code-lines.ts';

/**
 * For each line of a text, which line of the text before it is; -1 for a line that is new. Lines in front of and behind what
 * was edited are themselves, whatever the text means; in between they are known by what they say, then by their name, then by
 * the word that they begin with, and at last by their order.
 */
export function carriedLines(before: readonly CodeLine[], after: readonly CodeLine[]): number[] {
  const from = new Array<number>(after.length).fill(-1);
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start]?.text === after[start]?.text) {
    from[start] = start;
    start++;
  }
  let tail = 0;
  while (tail < shorter - start && before.at(-1 - tail)?.text === after.at(-1 - tail)?.text) {
    from[after.length - 1 - tail] = before.length - 1 - tail;
    tail++;
  }
  let old = range(start, before.length - tail);
  let fresh = range(start, after.length - tail);
  for (const by of ['text', 'key', 'head'] as const) {
    if (old.length === 0 || fresh.length === 0) break;
    const waiting = new Map<string, number[]>();
    for (const i of old) {
      const word = (before[i] as CodeLine)[by];
      const list = waiting.get(word);
      if (list === undefined) waiting.set(word, [i]);
      else list.push(i);
    }
    const taken = new Set<number>();
    fresh = fresh.filter((i) => {
      const match = waiting.get((after[i] as CodeLine)[by])?.shift();
      if (match === undefined) return true;
      from[i] = match;
      taken.add(match);
      return false;
    });
    old = old.filter((i) => !taken.has(i));
  }
  if (old.length === fresh.length) for (const [k, i] of fresh.entries()) from[i] = old[k] as number;
  return from;
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);

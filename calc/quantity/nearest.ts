import { CURRENCIES } from './currencies.ts';
import { ALIASES, AMBIGUOUS, AMBIGUOUS_ATOMS, MEANT } from './spellings.ts';
import { UNIT_ATOMS } from './units.ts';

const AT_MOST = 3;

/** spelling -> what to suggest for it */
const KNOWN_AND_MONEY: readonly (readonly [spelling: string, suggestion: string])[] = [
  ...UNIT_ATOMS.flatMap(({ symbol, spellings = [] }) =>
    [symbol, ...spellings].map((spelling) => [spelling, symbol] as const),
  ),
  ...[...ALIASES].map(([alias, means]) => [alias, means] as const),
  ...[...AMBIGUOUS, ...AMBIGUOUS_ATOMS].flatMap(([spelling, { choices }]) =>
    choices.map((choice) => [spelling, choice] as const),
  ),
  ...[...CURRENCIES].map((code) => [code, code] as const),
];

/**
 * Spellings that `text` may have meant, best first, at most three. A compound is mended atom by atom; `isUnit` says
 * whether a mended compound can be read.
 */
export function nearestUnits(text: string, isUnit: (candidate: string) => boolean): readonly string[] {
  const meant = MEANT.get(text);
  if (meant !== undefined) return meant;
  const [first = '', ...others] = text.split('/');
  const oneStroke = `${first}/${others.join('.')}`;
  if (others.length > 1 && isUnit(oneStroke)) return [oneStroke];
  let mended: readonly string[] = [''];
  for (const part of text.split(/([A-Za-z_%$"'#]+)/)) {
    const isWord = /^[A-Za-z_%$"'#]/.test(part);
    const choices = !isWord || isUnit(part) ? [part] : (MEANT.get(part) ?? nearestAtoms(part));
    mended = mended.flatMap((start) => choices.map((choice) => start + choice)).slice(0, 4 * AT_MOST);
  }
  return mended.filter((candidate) => candidate !== text && isUnit(candidate)).slice(0, AT_MOST);
}

function nearestAtoms(word: string): readonly string[] {
  const allowed = word.length < 2 ? 0 : word.length < 6 ? 1 : 2;
  const best = new Map<string, number>();
  // a slip of the shift key is the likeliest of all
  const shifted = KNOWN_AND_MONEY.filter(([spelling]) => spelling.toLowerCase() === word.toLowerCase());
  if (shifted.length > 0) return [...new Set(shifted.map(([, suggestion]) => suggestion))];
  for (const [spelling, suggestion] of KNOWN_AND_MONEY) {
    if (Math.abs(spelling.length - word.length) > allowed) continue;
    const distance = editDistance(word, spelling);
    if (distance <= allowed && distance < (best.get(suggestion) ?? Infinity)) best.set(suggestion, distance);
  }
  return [...best]
    .sort(([, left], [, right]) => left - right)
    .slice(0, AT_MOST)
    .map(([suggestion]) => suggestion);
}

/**
 * Letters to insert, delete, replace or swap with their neighbour: optimal string alignment (F. J. Damerau, 1964,
 * Communications of the ACM 7(3)).
 */
export function editDistance(left: string, right: string): number {
  let before: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, column) => column);
  for (let row = 1; row <= left.length; row += 1) {
    const next = [row];
    for (let column = 1; column <= right.length; column += 1) {
      const replaced = (last[column - 1] ?? 0) + (left[row - 1] === right[column - 1] ? 0 : 1);
      let least = Math.min(replaced, (last[column] ?? 0) + 1, (next[column - 1] ?? 0) + 1);
      if (row > 1 && column > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1]) {
        least = Math.min(least, (before[column - 2] ?? 0) + 1);
      }
      next.push(least);
    }
    before = last;
    last = next;
  }
  return last[right.length] ?? 0;
}

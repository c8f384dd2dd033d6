/**
 * The order in which words of both directions stand on a line: Unicode Standard Annex #9, its implicit rules (P2 to L2, L4).
 * Marks that set a direction by force are taken out of names before (`safe`), so its explicit rules have nothing to do.
 */

type Class = 'L' | 'R' | 'AL' | 'EN' | 'AN' | 'ES' | 'ET' | 'CS' | 'NSM' | 'WS' | 'ON';

/** Letters of scripts that run from right to left. */
export const rightToLeft =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Samaritan}\p{Script=Mandaic}\p{Script=Adlam}]/u;

/** The first that fits is the class of a letter (UAX #9, table 4). */
const classes: readonly (readonly [Class, RegExp])[] = [
  ['NSM', /[\p{Mn}\p{Me}]/u],
  ['EN', /[0-9\u00b2\u00b3\u00b9\u06f0-\u06f9\u2070\u2074-\u2079\u2080-\u2089\uff10-\uff19]/u],
  ['AN', /[\u0600-\u0605\u0660-\u0669\u066b\u066c\u06dd]/u],
  ['ES', /[+\-\u207a\u207b\u208a\u208b\u2212\ufb29]/u],
  ['ET', /[#%\u00b0\u00b1\u066a\u2030-\u2034\u2213\p{Sc}]/u],
  ['CS', /[,./:\u00a0\u060c\u202f\u2044]/u],
  ['WS', /\s/u],
  ['AL', /[\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\u061b\u061f]/u],
  ['R', rightToLeft],
  ['L', /[\p{L}\p{Mc}\p{Nl}\p{No}\p{Nd}]/u],
];

const classOf = (letter: string): Class => classes.find(([, letters]) => letters.test(letter))?.[0] ?? 'ON';

/** Pairs that open and close (BidiBrackets), and signs that are turned with their direction (BidiMirroring). */
const pairs = '()[]{}\u2039\u203a\u27e8\u27e9\u3008\u3009';
const mirrors = `${pairs}<>\u00ab\u00bb\u2264\u2265`;

function mirrored(letter: string): string {
  const at = mirrors.indexOf(letter);
  return at < 0 ? letter : (mirrors[at % 2 === 0 ? at + 1 : at - 1] ?? letter);
}

/** Level of each letter of a paragraph: even ones run to the right, odd ones to the left. */
export interface Levels {
  readonly base: 0 | 1;
  readonly of: readonly number[];
}

export function levelsOf(letters: readonly string[]): Levels {
  const original = letters.map(classOf);
  const first = original.find((each) => each === 'L' || each === 'R' || each === 'AL');
  const base = first === undefined || first === 'L' ? 0 : 1;
  const way: Class = base === 0 ? 'L' : 'R';
  const resolved = weak(original, way);
  paired(letters, original, resolved, way);
  neutral(resolved, way);
  return {
    base,
    of: resolved.map((each) => (base === 0 ? (each === 'L' ? 0 : each === 'R' ? 1 : 2) : each === 'R' ? 1 : 2)),
  };
}

/** W1 to W7: numbers and what stands with them. */
function weak(original: readonly Class[], way: Class): Class[] {
  const found = [...original];
  const last = (at: number, of: readonly Class[]): Class =>
    found.slice(0, at).findLast((each) => of.includes(each)) ?? way;
  found.forEach((each, i) => {
    if (each === 'NSM') found[i] = found[i - 1] ?? way;
  });
  found.forEach((each, i) => {
    if (each === 'EN' && last(i, ['L', 'R', 'AL']) === 'AL') found[i] = 'AN';
  });
  found.forEach((each, i) => {
    if (each === 'AL') found[i] = 'R';
  });
  found.forEach((each, i) => {
    const [before, behind] = [found[i - 1], found[i + 1]];
    if (before !== behind) return;
    if (before === 'EN' && (each === 'ES' || each === 'CS')) found[i] = 'EN';
    if (before === 'AN' && each === 'CS') found[i] = 'AN';
  });
  for (let i = 0; i < found.length; i++) {
    if (found[i] !== 'ET') continue;
    let end = i;
    while (found[end] === 'ET') end++;
    if (found[i - 1] === 'EN' || found[end] === 'EN') found.fill('EN', i, end);
    i = end - 1;
  }
  found.forEach((each, i) => {
    if (each === 'ES' || each === 'ET' || each === 'CS') found[i] = 'ON';
  });
  found.forEach((each, i) => {
    if (each === 'EN' && last(i, ['L', 'R']) === 'L') found[i] = 'L';
  });
  return found;
}

/** A number stands for the direction that it is in. */
const strong = (each: Class | undefined): Class | undefined =>
  each === 'L' ? 'L' : each === 'R' || each === 'EN' || each === 'AN' ? 'R' : undefined;

/** N0: brackets go with what stands in them. */
function paired(letters: readonly string[], original: readonly Class[], found: Class[], way: Class): void {
  for (const [open, close] of pairsIn(letters, original)) {
    const inside = new Set(found.slice(open + 1, close).map(strong));
    const other: Class = way === 'L' ? 'R' : 'L';
    const before =
      found
        .slice(0, open)
        .map(strong)
        .findLast((each) => each !== undefined) ?? way;
    const taken = inside.has(way) ? way : inside.has(other) ? (before === other ? other : way) : undefined;
    if (taken === undefined) continue;
    for (const at of [open, close]) {
      found[at] = taken;
      for (let i = at + 1; original[i] === 'NSM'; i++) found[i] = taken;
    }
  }
}

function pairsIn(letters: readonly string[], original: readonly Class[]): (readonly [number, number])[] {
  const open: { readonly close: string; readonly at: number }[] = [];
  const found: (readonly [number, number])[] = [];
  letters.forEach((letter, i) => {
    const at = original[i] === 'ON' ? pairs.indexOf(letter) : -1;
    if (at < 0) return;
    if (at % 2 === 0) open.push({ close: pairs[at + 1] ?? '', at: i });
    else {
      const match = open.findLastIndex(({ close }) => close === letter);
      if (match < 0) return;
      found.push([open[match]?.at ?? 0, i]);
      open.length = match;
    }
  });
  return found.sort(([a], [b]) => a - b);
}

/** N1, N2: what has no direction goes with its neighbours, or with the paragraph. */
function neutral(found: Class[], way: Class): void {
  for (let i = 0; i < found.length; i++) {
    if (strong(found[i]) !== undefined) continue;
    let end = i;
    while (end < found.length && strong(found[end]) === undefined) end++;
    const [before, behind] = [strong(found[i - 1]) ?? way, strong(found[end]) ?? way];
    found.fill(before === behind ? before : way, i, end);
    i = end - 1;
  }
}

/** Letters of one direction that stand together on a line. */
export interface Run {
  /** in the order in which they are read; brackets as they are seen */
  readonly letters: readonly string[];
  readonly leftwards: boolean;
}

/** A line (letters `from` to `to` of its paragraph) as runs from left to right. */
export function runsOf(letters: readonly string[], { base, of }: Levels, from = 0, to = letters.length): Run[] {
  // L1: what is blank at the end of a line has the direction of the paragraph
  let end = to;
  while (end > from && /\s/u.test(letters[end - 1] ?? '')) end--;
  const levels = of.slice(from, to).map((level, i) => (from + i >= end ? base : level));
  const runs: { level: number; letters: string[] }[] = [];
  levels.forEach((level, i) => {
    const letter = letters[from + i] ?? '';
    const run = runs.at(-1);
    if (run?.level === level) run.letters.push(level % 2 === 1 ? mirrored(letter) : letter);
    else runs.push({ level, letters: [level % 2 === 1 ? mirrored(letter) : letter] });
  });
  // L2: from the highest level down, all that is at least as high is turned round
  for (let level = Math.max(0, ...levels); level >= 1; level--) {
    for (let i = 0; i < runs.length; i++) {
      if ((runs[i]?.level ?? 0) < level) continue;
      let last = i;
      while ((runs[last]?.level ?? 0) >= level) last++;
      runs.splice(i, last - i, ...runs.slice(i, last).reverse());
      i = last;
    }
  }
  return runs.map(({ level, letters: own }) => ({ letters: own, leftwards: level % 2 === 1 }));
}

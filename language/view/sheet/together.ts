import { say } from '../text.ts';

/** Lists of what says the same, each where the first of its kind stands. */
export const alike = <T>(list: readonly T[], keyOf: (each: T) => string): T[][] => [
  ...Map.groupBy(list, keyOf).values(),
];

/** The same of neighbours alone, no more than `most` in one: for what keeps its order. */
export function neighboursAlike<T>(list: readonly T[], keyOf: (each: T) => string, most: number): T[][] {
  const found: { readonly key: string; readonly of: T[] }[] = [];
  for (const each of list) {
    const key = keyOf(each);
    const last = found.at(-1);
    if (last?.key === key && last.of.length < most) last.of.push(each);
    else found.push({ key, of: [each] });
  }
  return found.map(({ of }) => of);
}

/** `a.1 to a.12, b`: names that count on from each other are told by the first and the last. */
export function namesTogether(names: readonly string[]): string {
  const runs: { readonly first: string; last: string; readonly base: string; number: number; count: number }[] = [];
  for (const name of names) {
    const [, base = name, number = ''] = /^(.*?)(\d+)$/.exec(name) ?? [];
    const run = runs.at(-1);
    if (run !== undefined && number !== '' && run.base === base && Number(number) === run.number + 1) {
      run.last = name;
      run.number += 1;
      run.count += 1;
    } else runs.push({ first: name, last: name, base, number: number === '' ? Number.NaN : Number(number), count: 1 });
  }
  return runs
    .map(({ first, last, count }) =>
      count === 1 ? first : count === 2 ? `${first}, ${last}` : say('{first} to {last}', { first, last }),
    )
    .join(', ');
}

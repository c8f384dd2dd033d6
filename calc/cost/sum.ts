import { allKnown, type Figure, isKnown, knownBy } from '../figure/index.ts';

/** All amounts together, by the reasons of each; or everything that is missing among them. */
export function sumOf(amounts: readonly Figure<number>[]): Figure<number> {
  const all = allKnown(amounts);
  if (!isKnown(all)) return all;
  let sum = 0;
  for (const amount of all.value) sum += amount;
  return knownBy(sum, all.reasons);
}

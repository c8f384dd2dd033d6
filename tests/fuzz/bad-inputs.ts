import type { BadInput } from './bad-input-kit.ts';
import { duplicates, lets, repeats } from './bad-recipes.ts';
import { brackets, characters, size } from './bad-texts.ts';
import { dates, values } from './bad-values.ts';

export const badInputs: Readonly<Record<string, readonly BadInput[]>> = {
  size,
  brackets,
  repeats,
  lets,
  characters,
  duplicates,
  values,
  dates,
};

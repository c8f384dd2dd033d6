import { unitsOf } from '../../../calc/quantity/index.ts';
import type { DimensionName } from '../../../calc/quantity/types.ts';
import type { Argument, Word } from '../../words/index.ts';

/** What a price is per, by the entry that it stands in. */
const prices: Readonly<Record<string, readonly DimensionName[]>> = {
  fabric: ['price per area', 'price per length'],
  prepreg: ['price per area', 'price per length'],
  resin: ['price per mass', 'price per volume'],
  gelcoat: ['price per mass', 'price per volume'],
  catalyst: ['price per mass', 'price per volume'],
  paste: ['price per mass', 'price per volume'],
  core: ['price per area'],
  consumable: ['price per area', 'price per length', 'price per mass', 'price per volume', 'price per piece'],
};
/** A `let` may hold any of these. */
const anything: readonly DimensionName[] = ['length', 'angle', 'areal weight', 'mass', 'time', 'temperature'];
const noUnits: ReadonlySet<Argument['dimension']> = new Set([
  'name',
  'text',
  'point',
  'date',
  'count',
  'shape',
  'word',
  'test',
  'number',
]);

/** The units that may follow a number for an argument, with its basis where one must follow: `% by weight`. */
export function unitsFor(argument: Argument, word: Word | undefined, entry: string, currency: string): string[] {
  if (noUnits.has(argument.dimension)) return [];
  const dimensions: readonly DimensionName[] =
    argument.dimension === 'expression'
      ? anything
      : word?.word === 'price'
        ? (prices[entry] ?? ['money'])
        : [argument.dimension as DimensionName];
  const symbols = dimensions.flatMap((dimension) => unitsOf(dimension, currency).map((unit) => unit.symbol));
  const mixture = argument.dimension === 'ratio' && argument.basis !== undefined;
  return mixture ? (argument.basis ?? []).map((basis) => `% ${basis}`) : symbols;
}

import type { RecipeContext } from '../rule.ts';
import { factValue } from './layers.ts';

/**
 * Inside radius that a cloth goes into without a bridge, m, by its weight up to, kg/m2: 6 to 12 mm from memory, fillet first;
 * `habit inside_radius` of the shop sets its own.
 */
const radii: readonly (readonly [upTo: number, radius: number])[] = [
  [0.599, 0.006],
  [Infinity, 0.01],
];

/** The smallest inside corner that a cloth of a weight goes into, m. */
export const insideRadius = ({ book }: RecipeContext, weight: number): number | undefined =>
  factValue(book.shop?.habits?.inside_radius)?.amounts[0]?.si ?? radii.find(([upTo]) => weight <= upTo)?.[1];

import type { Amount, Reading } from '../../../calc/model/index.ts';
import { type Dimension, sameDimension } from '../../../calc/quantity/index.ts';

export { amountIn, readingsOf } from '../../../calc/record/readings.ts';

import type { Checks, RecipeContext } from '../rule.ts';

/** The recipe that a record names, as the rules of recipes see it; undefined where it is not found. */
export function planOf(context: Checks['record']): RecipeContext | undefined {
  const { recipe } = context;
  if (recipe === undefined) return undefined;
  const bench = context.benchOf(recipe);
  return { ...context, recipe, bench, ask: bench.ask.bind(bench) };
}

export const amountsIn = (reading: Reading, of: Dimension): readonly Amount[] =>
  reading.amounts.filter((amount) => sameDimension(amount.dimension, of));

import type { ExpectingRecipe, WireExpectation } from '../../language/protocol/expectations.ts';

/** Stays the same while the text is edited: the recipe, its size, what is tested. */
export const idOfRecipe = ({ recipe, size }: Pick<ExpectingRecipe, 'recipe' | 'size'>): string =>
  size === undefined ? recipe : `${recipe} size ${size}`;

/** Whether the Testing view would show something else than it does. */
export const sameVerdict = (one: WireExpectation | undefined, other: WireExpectation): boolean =>
  one !== undefined &&
  one.words === other.words &&
  one.verdict === other.verdict &&
  one.actual === other.actual &&
  one.beyond === other.beyond &&
  one.why.map(({ words }) => words).join() === other.why.map(({ words }) => words).join();

/** What stands behind the name of a test: the figure, or that there is none. */
export function describe({ verdict, actual, beyond }: WireExpectation, notYet: string): string {
  if (verdict === 'not yet') return notYet;
  return [actual, verdict === 'not met' && beyond !== undefined ? `(${beyond})` : ''].filter(Boolean).join(' ');
}

/** What the Testing view shows of a verdict, and when it is a new one. */
import { expect, it } from 'vitest';
import { describe, idOfRecipe, sameVerdict } from '../../extension/testing/verdicts.ts';
import type { WireExpectation } from '../../language/protocol/expectations.ts';

const at = { line: 3, character: 2 };
const met: WireExpectation = {
  id: 'mass',
  words: 'mass <= 300 g',
  range: { start: at, end: at },
  verdict: 'met',
  expected: '<= 300 g',
  actual: '280 g',
  why: [],
};

it('tells the figure, and by how much a limit is missed', () => {
  expect(describe(met, 'later')).toBe('280 g');
  expect(describe({ ...met, verdict: 'not met', actual: '320 g', beyond: '20 g' }, 'later')).toBe('320 g (20 g)');
  expect(describe({ ...met, verdict: 'not yet', actual: undefined }, 'later')).toBe('later');
  expect(describe({ ...met, verdict: 'cannot tell', actual: undefined }, 'later')).toBe('');
});

it('is the same while nothing but its line has moved', () => {
  const below = { line: 30, character: 2 };
  expect(sameVerdict(met, { ...met, range: { start: below, end: below } })).toBe(true);
  expect(sameVerdict(met, { ...met, actual: '281 g' })).toBe(false);
  expect(sameVerdict(met, { ...met, words: 'mass <= 310 g' })).toBe(false);
  expect(sameVerdict(undefined, met)).toBe(false);
});

it('a recipe and its sizes have ids of their own', () => {
  expect(new Set([idOfRecipe({ recipe: 'a' }), idOfRecipe({ recipe: 'a', size: 'short' })]).size).toBe(2);
});

import { expect } from 'vitest';
import { isImpossible, type Outcome } from '../../calc/outcome.ts';
import { inWords } from '../harness/words.ts';

/** The value of an outcome; fails with its problem where there is none. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (isImpossible(outcome)) throw new Error(`impossible: ${inWords(outcome.problem)}`);
  return outcome;
}

/** The problem of an outcome; fails where there is a value. */
export function problemOf(outcome: Outcome<unknown>): string {
  if (!isImpossible(outcome)) throw new Error(`expected a problem, got ${JSON.stringify(outcome)}`);
  return inWords(outcome.problem);
}

/** Within a share of the expected value, as published checks state it. */
export function expectWithin(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(
    relative * Math.abs(expected),
  );
}

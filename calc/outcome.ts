import { text, type Words } from './figure/figure.ts';

/**
 * Why a formula has no answer, in the words of the bench. It names what is wrong with the input and what would be
 * right.
 */
export interface Impossible {
  readonly problem: Words;
}

/** What a formula gives back: its value, or why there is none. Never NaN, never Infinity. */
export type Outcome<T = number> = T | Impossible;

/** What an input fails to be; undefined where it is fit. */
export type Demand = Words | undefined;

export function isImpossible<T>(outcome: Outcome<T>): outcome is Impossible {
  return typeof outcome === 'object' && outcome !== null && 'problem' in outcome;
}

export const positive = (what: Words, value: number): Demand =>
  Number.isFinite(value) && value > 0 ? undefined : text('{what} must be more than 0', { what });

export const notNegative = (what: Words, value: number): Demand =>
  Number.isFinite(value) && value >= 0 ? undefined : text('{what} must not be less than 0', { what });

export const finite = (what: Words, value: number): Demand =>
  Number.isFinite(value) ? undefined : text('{what} must be a number that can be told', { what });

/** A fraction of a mixture: both parts are there. */
export const fraction = (what: Words, value: number): Demand =>
  value > 0 && value < 1 ? undefined : text('{what} must lie between 0 and 100 %', { what });

/** A share that may also be nothing. */
export const share = (what: Words, value: number): Demand =>
  value >= 0 && value < 1 ? undefined : text('{what} must be at least 0 and less than 100 %', { what });

export const count = (what: Words, value: number, least = 1): Demand =>
  Number.isSafeInteger(value) && value >= least
    ? undefined
    : text('{what} must be a whole number, {least} or more', { what, least });

export const demand = (fit: boolean, otherwise: Words): Demand => (fit ? undefined : otherwise);

/** The value, if every demand is met and every number in it is finite; else the first problem. */
export function given<T>(demands: readonly Demand[], compute: () => Outcome<T>): Outcome<T> {
  for (const problem of demands) if (problem !== undefined) return { problem };
  const value = compute();
  return allFinite(value) ? value : { problem: 'the values are so large or so small that no result can be told' };
}

/** Goes on with a value that is possible; passes a problem through. */
export function following<A, B>(outcome: Outcome<A>, then: (value: A) => Outcome<B>): Outcome<B> {
  return isImpossible(outcome) ? outcome : then(outcome);
}

const long = 64;
const sound = new WeakSet<readonly unknown[]>();

/** Whether every number in a value is one. */
export function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null) return true;
  if (Array.isArray(value)) {
    // a line of thousands of points stands in many answers, and is looked through once
    if (value.length >= long && sound.has(value)) return true;
    for (let i = 0; i < value.length; i++) if (!allFinite(value[i])) return false;
    if (value.length >= long) sound.add(value);
    return true;
  }
  // a quantity: its dimension is a constant
  if ('si' in value && 'dimension' in value) return allFinite(value.si);
  for (const key in value) {
    const part = (value as Record<string, unknown>)[key];
    // what is no object is looked at here: most parts are numbers and words
    if (typeof part === 'number') {
      if (!Number.isFinite(part)) return false;
    } else if (typeof part === 'object' && part !== null && !allFinite(part)) return false;
  }
  return true;
}

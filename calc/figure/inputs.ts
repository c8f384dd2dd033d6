import type { Place } from '../model/place.ts';
import { type Fact, UNKNOWN, type Unknown } from '../model/value.ts';
import { isImpossible, type Outcome } from '../outcome.ts';
import type { Quantity } from '../quantity/types.ts';
import {
  cannot,
  type Figure,
  isKnown,
  known,
  missing,
  type Origin,
  type Reason,
  reason,
  type Shown,
  text,
  type Words,
} from './figure.ts';

/** Where a fact of an entry came from, by the entry. */
export function originOf(at: Place): Origin {
  if (at.entry.startsWith('stock/')) return 'stock';
  return at.entry === 'shop' || at.entry.startsWith('shop/') ? 'shop' : 'typed';
}

/** Something typed that may be missing or `?`. `what` is spoken of as in `the price of mat_300`. */
export function typed<T>(value: T | Unknown | undefined, what: Words, at: Place, source?: string): Figure<T> {
  if (value === undefined) return cannot(reason(originOf(at), text('{what} is not given', { what }), { at }));
  if (value === UNKNOWN) return cannot(reason(originOf(at), text('{what} is not known (?)', { what }), { at }));
  const shown = shownOf(value as T);
  const words = shown === undefined ? text('{what}', { what }) : text('{what}: {value}', { what, value: shown });
  return known(value as T, reason(originOf(at), words, { at, source }));
}

/** A fact of an entry. `missing` is where it would have to be written. */
export function factOf<T>(fact: Fact<T> | undefined, what: Words, missing: Place): Figure<T> {
  return fact === undefined ? typed<T>(undefined, what, missing) : typed(fact.value, what, fact.at, fact.source);
}

/** The SI number of a quantity, when that is all that a formula needs. */
export const siOf = (amount: Figure<Quantity>): Figure<number> =>
  isKnown(amount) ? { value: amount.value.si, reasons: amount.reasons } : amount;

/** The answer of a formula as a figure; `how` says by which method, the inputs hang under it. */
export function worked<T>(
  outcome: Outcome<T>,
  how: Words,
  more: { readonly source?: string; readonly at?: Place; readonly reasons?: readonly Reason[] } = {},
): Figure<T> {
  if (isImpossible(outcome)) return cannot(reason('computed', outcome.problem, { at: more.at }));
  return known(outcome, reason('computed', how, more));
}

/** All of a list, or everything that is missing in it. */
export function allKnown<T>(figures: readonly Figure<T>[]): Figure<readonly T[]> {
  const [only] = figures;
  if (only === undefined) return { value: [], reasons: [] };
  if (figures.length === 1 && isKnown(only)) return { value: [only.value], reasons: only.reasons };
  const values: T[] = [];
  const reasons: Reason[] = [];
  for (const figure of figures) {
    if (!isKnown(figure)) return missing(...figures);
    values.push(figure.value);
    for (const each of figure.reasons) reasons.push(each);
  }
  return { value: values, reasons };
}

function shownOf(value: unknown): Shown | undefined {
  if (typeof value === 'string' || typeof value === 'number') return value;
  return typeof value === 'object' && value !== null && 'si' in value && 'dimension' in value
    ? (value as Quantity)
    : undefined;
}

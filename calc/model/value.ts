import type { Basis, Quantity } from '../quantity/types.ts';
import type { Place } from './place.ts';

/** `?` in the text: the writer says that the value is known to be unknown. */
export const UNKNOWN = 'unknown';
export type Unknown = typeof UNKNOWN;

/** A typed quantity with what was said beside it: `1.10 g/cm3 +- 0.02 g/cm3`, `15 mbar absolute`, `52 % by volume`. */
export interface Amount extends Quantity {
  readonly tolerance?: Quantity;
  readonly basis?: Basis;
}

/** An inclusive range `a to b`. */
export interface AmountRange {
  readonly low: Amount;
  readonly high: Amount;
}

/** One fact of an entry: its value, where it came from, and where it stands. */
export interface Fact<T> {
  readonly value: T | Unknown;
  readonly source?: string;
  readonly at: Place;
}

export interface Accepted {
  readonly rule: string;
  readonly reason: string;
  readonly path: string;
}

/** What any line may carry. */
export interface Remarks {
  readonly notes?: readonly string[];
  readonly accepts?: readonly Accepted[];
}

/** One coordinate: from the centre, or from a named end (`210 mm from heel`). Metres. */
export interface Coordinate {
  readonly offset: Amount;
  readonly from?: string;
}

export interface PlacePoint {
  readonly x: Coordinate;
  readonly y: Coordinate;
}

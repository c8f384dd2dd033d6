import { text } from '../figure/figure.ts';
import { given, type Outcome, positive, share } from '../outcome.ts';

/** What the balance must show when a part has been poured into the cup that stands on it, kg. */
export interface Reading {
  readonly what: string;
  /** of this part alone */
  readonly mass: number;
  /** of all poured so far, the cup tared */
  readonly shows: number;
  /** the lowest and the highest that the ratio allows; of the first part, none: the others follow it */
  readonly between?: { readonly low: number; readonly high: number };
}

/**
 * The second weighing of a mix: parts (kg, in the order they are poured) are poured into one cup, and after each the
 * balance is read again. Every part after the first may be off by `tolerance` (a share of itself).
 */
export function readingsOfMix(
  parts: readonly { readonly what: string; readonly mass: number }[],
  tolerance: number,
): Outcome<readonly Reading[]> {
  return given(
    [
      ...parts.map((part) => positive(text('the mass of {what}', { what: part.what }), part.mass)),
      share('the tolerance', tolerance),
    ],
    () => {
      let shows = 0;
      return parts.map(({ what, mass }, i) => {
        const before = shows;
        shows += mass;
        const between = { low: before + mass * (1 - tolerance), high: before + mass * (1 + tolerance) };
        return i === 0 ? { what, mass, shows } : { what, mass, shows, between };
      });
    },
  );
}

/**
 * The ratio that was really mixed, from the cup before and after the second part: parts of the second to 100 of the
 * first, by weight.
 */
export function ratioByWeighings(first: number, both: number): Outcome {
  return given(
    [
      positive('the mass of the first part', first),
      both > first ? undefined : 'the second weighing shows no more than the first',
    ],
    () => (100 * (both - first)) / first,
  );
}

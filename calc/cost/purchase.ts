import { given, notNegative, type Outcome, positive, share } from '../outcome.ts';

/**
 * What is taken from the roll or sheet (m2, m or kg) for `net` of it in the part, where `waste` is the share of what is
 * taken that is thrown away (0.15 is 15 %): net / (1 - waste).
 */
export function taken(net: number, waste: number): Outcome {
  return given([notNegative('the amount in the part', net), share('the waste', waste)], () => net / (1 - waste));
}

/** Length (m) off a roll of `width` (m) for an area (m2). */
export function lengthOffRoll(area: number, width: number): Outcome {
  return given([notNegative('the area', area), positive('the width of the roll', width)], () => area / width);
}

/** Money for an amount at a price for each unit of it, waste included. */
export function purchase(net: number, price: number, waste = 0): Outcome {
  return given(
    [notNegative('the amount in the part', net), notNegative('the price', price), share('the waste', waste)],
    () => (net / (1 - waste)) * price,
  );
}

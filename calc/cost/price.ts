import type { Price } from '../model/material.ts';
import { given, isImpossible, notNegative, type Outcome, positive } from '../outcome.ts';

/** What is bought, in every measure that is known of it. SI; a price is taken for the first measure that fits it. */
export interface Bought {
  readonly area?: number;
  readonly length?: number;
  readonly mass?: number;
  readonly volume?: number;
  readonly pieces?: number;
  /** of a sheet: prices may hold for one thickness */
  readonly thickness?: number;
}

export interface PricedAt {
  readonly price: Price;
  readonly cost: number;
  /** the price is for another thickness and was taken pro rata */
  readonly prorated: boolean;
}

const measureOf = (bought: Bought, { per }: Price): number | undefined => {
  if (per === 'piece') return bought.pieces;
  return bought[per];
};

/**
 * Money for what is bought. Of several prices that with the thickness bought is taken, then one without a thickness, then the one
 * for the nearest thickness, pro rata.
 */
export function priceOf(prices: readonly Price[], bought: Bought): Outcome<PricedAt> {
  const asItStands = fitting(prices, bought);
  const price = asItStands ?? nearest(prices, bought);
  if (price === undefined) return { problem: 'none of its prices is for what is used of it (m2, m, kg, m3 or each)' };
  const prorated = asItStands === undefined;
  const amount = measureOf(bought, price) ?? 0;
  const share = prorated ? shareOf(price, bought.thickness) : 1;
  if (isImpossible(share)) return share;
  const cost = given(
    [notNegative('the price', price.amount.si), notNegative('the amount', amount)],
    () => amount * price.amount.si * share,
  );
  return isImpossible(cost) ? cost : { price, cost, prorated };
}

/** The first price for the thickness bought, else the first for every thickness. */
function fitting(prices: readonly Price[], bought: Bought): Price | undefined {
  const { thickness } = bought;
  let plain: Price | undefined;
  for (const price of prices) {
    if (measureOf(bought, price) === undefined) continue;
    if (price.thickness === undefined) plain ??= price;
    else if (thickness !== undefined && Math.abs(price.thickness.si - thickness) < 1e-6) return price;
  }
  return plain;
}

function nearest(prices: readonly Price[], bought: Bought): Price | undefined {
  const { thickness } = bought;
  if (thickness === undefined) return undefined;
  const apart = (p: Price): number => Math.abs((p.thickness?.si ?? 0) - thickness);
  let best: Price | undefined;
  for (const price of prices)
    if (measureOf(bought, price) !== undefined && (best === undefined || apart(price) < apart(best))) best = price;
  return best;
}

function shareOf(price: Price, thickness: number | undefined): Outcome {
  if (thickness === undefined || price.thickness === undefined) return 1;
  const at = price.thickness.si;
  return given([positive('the thickness that the price holds for', at)], () => thickness / at);
}

import type { Price } from '../model/material.ts';
import { following, given, notNegative, type Outcome, positive } from '../outcome.ts';

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
  const { thickness } = bought;
  const fits = (price: Price): boolean => measureOf(bought, price) !== undefined;
  const exact =
    thickness === undefined
      ? undefined
      : prices.find((p) => p.thickness !== undefined && Math.abs(p.thickness.si - thickness) < 1e-6 && fits(p));
  const plain = exact ?? prices.find((p) => p.thickness === undefined && fits(p));
  const price = plain ?? nearest(prices.filter(fits), thickness);
  if (price === undefined) return { problem: 'none of its prices is for what is used of it (m2, m, kg, m3 or each)' };
  const amount = measureOf(bought, price) ?? 0;
  return following(shareOf(price, plain === undefined ? thickness : undefined), (share) =>
    given([notNegative('the price', price.amount.si), notNegative('the amount', amount)], () => ({
      price,
      cost: amount * price.amount.si * share,
      prorated: plain === undefined,
    })),
  );
}

function nearest(prices: readonly Price[], thickness: number | undefined): Price | undefined {
  if (thickness === undefined) return undefined;
  const apart = (p: Price): number => Math.abs((p.thickness?.si ?? 0) - thickness);
  return prices.reduce<Price | undefined>(
    (best, p) => (best === undefined || apart(p) < apart(best) ? p : best),
    undefined,
  );
}

function shareOf(price: Price, thickness: number | undefined): Outcome {
  if (thickness === undefined || price.thickness === undefined) return 1;
  const at = price.thickness.si;
  return given([positive('the thickness that the price holds for', at)], () => thickness / at);
}

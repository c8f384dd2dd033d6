import { onceFor } from '../kept.ts';
import { UNKNOWN } from '../model/value.ts';
import { sameDimension } from '../quantity/dimension.ts';
import type { Quantity } from '../quantity/types.ts';
import type { Bench } from './bench.ts';
import { type Figure, known, reason, text } from './figure.ts';

/** A value that the trade takes where the shop has no habit of its own. */
export interface Usual {
  /** the word of `habit` in the entry of the shop */
  readonly habit: string;
  /** as it is spoken of */
  readonly what: string;
  readonly value: Quantity;
  readonly source: string;
}

/** `habit NAME value` of the shop, else what is usual in the trade; SI. */
export function usual(bench: Bench, habitual: Usual): Figure<number> {
  const { habit, what } = habitual;
  const own = ownHabit(bench, habitual);
  const fact = own === undefined ? undefined : bench.shop?.habits?.[habit];
  if (own !== undefined && fact !== undefined) {
    return known(
      own.si,
      reason('shop', text('{what}: {value}', { what, value: own }), { at: fact.at, source: fact.source }),
    );
  }
  return byTrade(habitual);
}

const byTrade = onceFor(({ what, value, source }: Usual) =>
  known(value.si, reason('trade', text('{what}: {value}', { what, value }), { source })),
);

/** The value of `usual` alone, for who does not say where it comes from: a threshold of a rule. */
export const habitOf = (bench: Bench, habitual: Usual): number => (ownHabit(bench, habitual) ?? habitual.value).si;

function ownHabit(bench: Bench, { habit, value }: Usual): Quantity | undefined {
  const fact = bench.shop?.habits?.[habit];
  const own = fact === undefined || fact.value === UNKNOWN ? undefined : fact.value.amounts[0];
  return own !== undefined && sameDimension(own.dimension, value.dimension) && Number.isFinite(own.si)
    ? own
    : undefined;
}

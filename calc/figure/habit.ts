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
export function usual(bench: Bench, { habit, what, value, source }: Usual): Figure<number> {
  const fact = bench.shop?.habits?.[habit];
  const own = fact === undefined || fact.value === UNKNOWN ? undefined : fact.value.amounts[0];
  if (
    fact !== undefined &&
    own !== undefined &&
    sameDimension(own.dimension, value.dimension) &&
    Number.isFinite(own.si)
  ) {
    return known(
      own.si,
      reason('shop', text('{what}: {value}', { what, value: own }), { at: fact.at, source: fact.source }),
    );
  }
  return known(value.si, reason('trade', text('{what}: {value}', { what, value }), { source }));
}

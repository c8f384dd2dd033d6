import { count, given, notNegative, type Outcome } from '../outcome.ts';

/** What one part costs before overhead; money of one currency. */
export interface DirectCost {
  readonly material: number;
  readonly consumables: number;
  readonly labour: number;
  readonly mould: number;
}

export interface PartCost extends DirectCost {
  readonly overhead: number;
  readonly total: number;
}

/** Share of a mould's cost that one part bears. */
export function mouldShare(cost: number, parts: number): Outcome {
  return given(
    [notNegative('the cost of the mould', cost), count('the number of parts that the mould makes', parts)],
    () => cost / parts,
  );
}

/** Cost of one part with overhead as a share (0.12 is 12 %) of all else. */
export function partCost(direct: DirectCost, overhead: number): Outcome<PartCost> {
  const { material, consumables, labour, mould } = direct;
  return given(
    [
      notNegative('the cost of material', material),
      notNegative('the cost of consumables', consumables),
      notNegative('the cost of labour', labour),
      notNegative('the cost of the mould', mould),
      notNegative('the overhead', overhead),
    ],
    () => {
      const sum = material + consumables + labour + mould;
      return { material, consumables, labour, mould, overhead: sum * overhead, total: sum * (1 + overhead) };
    },
  );
}

/** The cost of `quantity` parts, item by item. */
export function orderCost(part: PartCost, quantity: number): Outcome<PartCost> {
  return given([count('the quantity', quantity)], () => ({
    material: part.material * quantity,
    consumables: part.consumables * quantity,
    labour: part.labour * quantity,
    mould: part.mould * quantity,
    overhead: part.overhead * quantity,
    total: part.total * quantity,
  }));
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labourCost, timeForArea } from '../../../calc/cost/labour.ts';
import { mouldShare, orderCost, partCost } from '../../../calc/cost/part-cost.ts';
import { lengthOffRoll, purchase, taken } from '../../../calc/cost/purchase.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

describe('the cost of a part', () => {
  it('is the sum of its items, and an order that of its parts', () => {
    const money = fc.double({ min: 0, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(
        money,
        money,
        money,
        money,
        fc.integer({ min: 1, max: 500 }),
        (material, consumables, labour, mould, n) => {
          const part = valueOf(partCost({ material, consumables, labour, mould }, 0.12));
          expectWithin(part.material + part.consumables + part.labour + part.mould + part.overhead, part.total, 1e-9);
          expectWithin(valueOf(orderCost(part, n)).total, n * part.total, 1e-12);
        },
      ),
    );
    const part = valueOf(partCost({ material: 50, consumables: 20, labour: 68, mould: 6 }, 0.12));
    expectWithin(part.total, 161.28, 1e-12);
  });

  it('counts what is thrown away with what is bought', () => {
    expectWithin(valueOf(taken(0.85, 0.15)), 1, 1e-12);
    expectWithin(valueOf(purchase(0.85, 7.4, 0.15)), 7.4, 1e-12);
    expectWithin(valueOf(lengthOffRoll(1.27, 1.27)), 1, 1e-12);
  });

  it('counts work by the hour, or by the area at a speed', () => {
    expectWithin(valueOf(labourCost(5400, 34 / 3600, 2)), 102, 1e-12);
    expectWithin(valueOf(timeForArea(3, 6 / 3600)), 1800, 1e-12);
    expectWithin(valueOf(mouldShare(900, 150)), 6, 1e-12);
  });

  it('has no answer for what cannot be', () => {
    expect(problemOf(purchase(1, 7.4, 1))).toMatch(/less than 100 %/);
    expect(problemOf(mouldShare(900, 0))).toMatch(/whole number, 1 or more/);
    expect(problemOf(partCost({ material: Number.NaN, consumables: 0, labour: 0, mould: 0 }, 0))).toMatch(/material/);
    expect(problemOf(labourCost(60, 1, 1.5))).toMatch(/people/);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doseByWeight, smallestBatch, stepOfDose, weightDoseOf } from '../../../calc/resin/catalyst.ts';
import { ratioByWeight, splitMix } from '../../../calc/resin/mix.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

describe('a mix split to the step of the scale', () => {
  it('makes up the total, in whole steps, no farther from the ratio than plain rounding', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.integer({ min: 10, max: 100 }),
        fc.constantFrom(0.001, 0.0001, 0.005),
        (total, hardener, step) => {
          const split = valueOf(splitMix(total, [100, hardener], step));
          expect(split.total).toBeGreaterThanOrEqual(total * (1 - 1e-9));
          expect(split.total).toBeLessThanOrEqual(total * 1.02 + 6 * step);
          const resin = Math.ceil((total * 100) / (100 + hardener) / step);
          const rounded = Math.max(1, Math.round((resin * hardener) / 100));
          if ((resin + rounded) * step >= total) {
            const plain = Math.abs(rounded / resin / (hardener / 100) - 1);
            expect(split.ratioError).toBeLessThanOrEqual(plain + 1e-12);
          }
          for (const part of split.parts) expect(Math.abs(part / step - Math.round(part / step))).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('finds the weights that fit the ratio', () => {
    const split = valueOf(splitMix(1.15, [100, 31], 0.001));
    expect(split.ratioError).toBeLessThan(3e-4);
    const exact = valueOf(splitMix(0.125, [4, 1], 0.001));
    expect(exact.parts[0]).toBeCloseTo(0.1, 12);
    expect(exact.parts[1]).toBeCloseTo(0.025, 12);
    expect(exact.ratioError).toBe(0);
    expect(valueOf(splitMix(0.3, [100, 30, 2], 0.0001)).parts).toHaveLength(3);
  });

  it('says what stands in its way', () => {
    expect(problemOf(splitMix(0, [100, 31], 0.001))).toMatch(/mass to mix/);
    expect(problemOf(splitMix(1, [100], 0.001))).toMatch(/two parts/);
    expect(problemOf(splitMix(1, [100, 0], 0.001))).toMatch(/each part/);
    expect(problemOf(splitMix(1e9, [100, 31], 1e-12))).toMatch(/too fine/);
  });

  it('takes parts by volume to parts by weight', () => {
    expect(ratioByWeight([2, 1], [1100, 1000])).toEqual([2200, 1000]);
    expect(problemOf(ratioByWeight([2, 1], [1100]))).toMatch(/needs its density/);
  });
});

describe('catalyst', () => {
  it('is 20 g or 17.2 ml for 1 kg at 2 % and a density of 1.16', () => {
    const dose = valueOf(doseByWeight(1, 0.02, 1160));
    expectWithin(dose.mass, 0.02, 1e-12);
    expectWithin(dose.volume, 17.24e-6, 1e-3);
  });

  it('by volume in a heavy gelcoat is less by weight', () => {
    expectWithin(valueOf(weightDoseOf(0.02, 1160, 1250)), 0.01856, 1e-9);
  });

  it('for a small batch is lost on a coarse scale', () => {
    expectWithin(valueOf(stepOfDose(0.15 * 0.015, 0.001)), 0.444, 2e-3);
    expectWithin(valueOf(smallestBatch(0.015, 0.0001)), 0.1333, 1e-3);
    expect(problemOf(doseByWeight(1, 1.5, 1160))).toMatch(/between 0 and 100 %/);
  });
});

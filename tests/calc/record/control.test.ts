import { describe, expect, it } from 'vitest';
import { driftScore, driftSlope, individualsLimits, median } from '../../../calc/record/control.ts';
import { problemOf, valueOf } from '../outcomes.ts';

describe('the spread of a shop', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, example of flow rates of ten batches
  const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

  it('is that of the worked example of the NIST handbook', () => {
    const limits = valueOf(individualsLimits(flow));
    expect(limits.mean).toBeCloseTo(50.81, 10);
    expect(limits.movingRange).toBeCloseTo(1.8778, 4);
    expect(limits.high).toBeCloseTo(55.8041, 3);
    expect(limits.low).toBeCloseTo(45.8159, 3);
  });

  it('is not told of a single build', () => {
    expect(problemOf(individualsLimits([2.1]))).toMatch(/two values/);
    expect(problemOf(driftScore([1, 2, 3]))).toMatch(/four values/);
  });

  it('has a middle that one slip of the pen does not move', () => {
    expect(median([2.1, 2.2, 21])).toBe(2.2);
    expect(median([2, 4])).toBe(3);
  });

  it('drifts by the median of all slopes, whatever one odd build says', () => {
    expect(driftSlope([1, 2, 3, 4, 5])).toBe(1);
    expect(driftSlope([1, 2, 30, 4, 5])).toBeCloseTo(1, 10);
    expect(driftSlope([5, 5, 5])).toBe(0);
  });

  it('drifts beyond chance where every build rises, and does not where they take turns', () => {
    // S = 45 of ten values in order; variance 10 * 9 * 25 / 18 = 125; score 44 / 11.18
    expect(driftScore([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toBeCloseTo(44 / Math.sqrt(125), 10);
    expect(Math.abs(valueOf(driftScore([1, 2, 1, 2, 1, 2, 1, 2])))).toBeLessThan(1.96);
  });
});

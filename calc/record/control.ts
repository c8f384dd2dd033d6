import { demand, finite, given, type Outcome } from '../outcome.ts';

/** The middle and the spread of single values in the order they came, and the limits that chance alone keeps within. */
export interface ControlLimits {
  readonly mean: number;
  /** mean of the steps from one value to the next, without sign */
  readonly movingRange: number;
  readonly low: number;
  readonly high: number;
}

/** Mean range of two values of a normal distribution, in standard deviations. */
const D2 = 1.128;

/**
 * Limits of an individuals chart: mean +- 3 MR / d2 with d2 = 1.128, MR the mean moving range of two. Source: NIST/SEMATECH
 * e-Handbook of Statistical Methods, 6.3.2.2. Fewer than two values have no spread.
 */
export function individualsLimits(values: readonly number[]): Outcome<ControlLimits> {
  return given(
    [
      demand(values.length >= 2, 'two values at least are needed to tell a spread'),
      ...values.map((v) => finite('each value', v)),
    ],
    () => {
      const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
      const steps = values.slice(1).map((v, i) => Math.abs(v - values[i]!));
      const movingRange = steps.reduce((sum, v) => sum + v, 0) / steps.length;
      const reach = (3 * movingRange) / D2;
      return { mean, movingRange, low: mean - reach, high: mean + reach };
    },
  );
}

/** The middle value, which one slip of the pen does not move. */
export function median(values: readonly number[]): Outcome {
  return given([demand(values.length > 0, 'there is no value')], () => {
    const sorted = [...values].sort((a, b) => a - b);
    const half = sorted.length >> 1;
    return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
  });
}

/**
 * How much the values rise from one build to the next: the median of the slopes of all pairs (Theil 1950, Sen 1968), which
 * single odd builds do not move.
 */
export function driftSlope(values: readonly number[]): Outcome {
  return given([demand(values.length >= 2, 'two values at least are needed to tell a drift')], () => {
    const slopes: number[] = [];
    for (let i = 0; i < values.length; i++)
      for (let j = i + 1; j < values.length; j++) slopes.push((values[j]! - values[i]!) / (j - i));
    const middle = median(slopes);
    return typeof middle === 'number' ? middle : 0;
  });
}

/**
 * Whether the values drift: Kendall's S of the pairs that rise less those that fall, against its spread for values in no
 * order (Mann 1945, Kendall 1975: variance n (n - 1)(2n + 5) / 18, without ties). The score is in standard deviations;
 * beyond 1.96 either way, one series in twenty looks so by chance.
 */
export function driftScore(values: readonly number[]): Outcome {
  return given([demand(values.length >= 4, 'four values at least are needed to tell a drift from chance')], () => {
    const n = values.length;
    let s = 0;
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) s += Math.sign(values[j]! - values[i]!);
    const variance = (n * (n - 1) * (2 * n + 5)) / 18;
    return s === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  });
}

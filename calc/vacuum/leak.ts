import { given, notNegative, type Outcome, positive } from '../outcome.ts';

/**
 * How fast pressure rises in a closed bag, Pa/s, from a rise (Pa) in a time (s). Limits written in any way compare by
 * it.
 */
export function leakRate(rise: number, time: number): Outcome {
  return given(
    [notNegative('the rise of pressure', rise), positive('the time of the leak test', time)],
    () => rise / time,
  );
}

/** The same in mbar/min, as it is spoken of at the bench. */
export const mbarPerMinute = (rate: number): number => (rate * 60) / 100;

/** A leak test: pressure rises by `rise` (Pa) in `time` (s). */
export interface LeakTest {
  readonly rise: number;
  readonly time: number;
}

/** How many times over a limit a reading is, rate by rate: up to 1 it passes. */
export function leakOfLimit(reading: LeakTest, limit: LeakTest): Outcome {
  return given(
    [
      notNegative('the rise of pressure', reading.rise),
      positive('the time of the leak test', reading.time),
      positive('the rise that is allowed', limit.rise),
      positive('the time of the limit', limit.time),
    ],
    () => reading.rise / reading.time / (limit.rise / limit.time),
  );
}

/** The shortest test (s) in which a leak at the limit moves a gauge by one of its divisions (Pa). */
export function shortestTest(limit: LeakTest, division: number): Outcome {
  return given(
    [
      positive('the division of the gauge', division),
      positive('the rise that is allowed', limit.rise),
      positive('the time of the limit', limit.time),
    ],
    () => (division * limit.time) / limit.rise,
  );
}

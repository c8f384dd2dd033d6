import { demand, finite, given, notNegative, type Outcome, positive } from '../outcome.ts';
import { usualFactorPer10K } from '../resin/working-time.ts';

/** A stretch of a schedule in which the temperature runs evenly from one value (K) to another; `time` in s. */
export interface HeatSpan {
  readonly from: number;
  readonly to: number;
  readonly time: number;
}

/**
 * The time (s) at `reference` (K) that cures as far as all the spans do, by the factor f for each 10 K: the integral of
 * f^((T - T_ref) / 10) dt, in closed form on a ramp. The rule of the resin makers (every 10 K halves the time); it knows
 * nothing of vitrification, so it flatters a cool cure.
 */
export function equivalentTime(
  spans: readonly HeatSpan[],
  reference: number,
  factorPer10K = usualFactorPer10K,
): Outcome {
  return given(
    [
      positive('the absolute temperature of reference', reference),
      demand(factorPer10K > 1, 'the factor for each 10 K must be more than 1'),
      ...spans.flatMap((span) => [
        finite('a temperature of the cure', span.from),
        finite('a temperature of the cure', span.to),
        notNegative('a time of the cure', span.time),
      ]),
    ],
    () => spans.reduce((sum, span) => sum + span.time * meanSpeed(span, reference, factorPer10K), 0),
  );
}

function meanSpeed({ from, to }: HeatSpan, reference: number, factor: number): number {
  const speed = (temperature: number): number => factor ** ((temperature - reference) / 10);
  if (Math.abs(to - from) < 1e-6) return speed((from + to) / 2);
  return ((speed(to) - speed(from)) * 10) / (Math.log(factor) * (to - from));
}

/** The hottest that the spans get, K; undefined where there are none. */
export const hottest = (spans: readonly HeatSpan[]): number | undefined =>
  spans.length === 0 ? undefined : spans.reduce((most, { from, to }) => Math.max(most, from, to), 0);

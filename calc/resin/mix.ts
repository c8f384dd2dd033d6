import { type Demand, given, type Outcome, positive } from '../outcome.ts';

/** A batch as it is weighed. */
export interface MixSplit {
  /** kg of each part, whole steps of the balance */
  readonly parts: readonly number[];
  readonly total: number;
  /** largest deviation of a part from the ratio to the first part, as a share (0.01 is 1 %) */
  readonly ratioError: number;
}

/**
 * Splits `total` (kg) by `ratio` (parts by weight) into weights that the balance can show (`step`, kg), so that they
 * come nearest to the ratio: of all first parts that make no less than the total and no more than 2 % (or two steps)
 * over it, the one with the smallest error is taken, and of equals the smallest batch.
 */
export function splitMix(total: number, ratio: readonly number[], step: number): Outcome<MixSplit> {
  return given(
    [positive('the mass to mix', total), positive('the step of the scale', step), ...ratioDemands(ratio)],
    () => {
      const sum = ratio.reduce((s, r) => s + r, 0);
      const first = (total * ratio[0]!) / sum / step;
      if (first > Number.MAX_SAFE_INTEGER / 4)
        return { problem: 'the step of the scale is too fine for the mass to mix' };
      const from = Math.max(1, Math.floor(first));
      const to = Math.min(Math.ceil(Math.max(first * 1.02, first + 2)), from + mostTried);
      let best: { readonly steps: readonly number[]; readonly ratioError: number } | undefined;
      for (let n = from; n <= to; n++) {
        const steps = ratio.map((r, i) => (i === 0 ? n : Math.max(1, Math.round((n * r) / ratio[0]!))));
        if (steps.reduce((s, k) => s + k, 0) * step < total * (1 - 1e-9)) continue;
        const ratioError = largestError(steps, ratio);
        if (best === undefined || ratioError < best.ratioError - 1e-12) best = { steps, ratioError };
      }
      if (best === undefined) return { problem: 'no batch of whole steps of the scale makes up this mass' };
      const parts = best.steps.map((k) => k * step);
      return { parts, total: parts.reduce((s, p) => s + p, 0), ratioError: best.ratioError };
    },
  );
}

const mostTried = 20_000;

/** Parts by weight from parts by volume and the densities of the parts (kg/m3). */
export function ratioByWeight(byVolume: readonly number[], densities: readonly number[]): Outcome<readonly number[]> {
  return given(
    [
      ...ratioDemands(byVolume),
      ...densities.map((d) => positive('the density of each part', d)),
      densities.length === byVolume.length ? undefined : 'each part of the mix needs its density',
    ],
    () => byVolume.map((v, i) => v * densities[i]!),
  );
}

/** How far what was weighed is from the ratio: (a/b) / (A/B) - 1, positive with too little of the second part. */
export function ratioDeviation(weighed: readonly [number, number], ratio: readonly [number, number]): Outcome {
  return given(
    [...weighed.map((m) => positive('each weighed mass', m)), ...ratioDemands(ratio)],
    () => weighed[0] / weighed[1] / (ratio[0] / ratio[1]) - 1,
  );
}

/**
 * The lowest and highest ratio a:b that two weighings (kg) may really have when each may be off by `error` (kg): half a
 * step of the scale at best, and its accuracy on top.
 */
export function ratioSpread(
  weighed: readonly [number, number],
  error: number,
): Outcome<{ readonly low: number; readonly high: number }> {
  const [a, b] = weighed;
  return given(
    [
      positive('the error of the scale', error),
      a > error && b > error ? undefined : 'the scale is off by as much as is weighed on it',
    ],
    () => ({ low: (a - error) / (b + error), high: (a + error) / (b - error) }),
  );
}

function largestError(steps: readonly number[], ratio: readonly number[]): number {
  return Math.max(...steps.map((k, i) => Math.abs(k / steps[0]! / (ratio[i]! / ratio[0]!) - 1)));
}

function ratioDemands(ratio: readonly number[]): Demand[] {
  const enough = ratio.length >= 2 ? undefined : 'a mix needs at least two parts';
  return [enough, ...ratio.map((r) => positive('each part of the mix', r))];
}

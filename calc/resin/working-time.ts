import { demand, following, given, isImpossible, type Outcome, positive } from '../outcome.ts';
import { type AtTemperature, activationEnergy, arrhenius, nearestPair } from './arrhenius.ts';
import { type Converted, methodOf } from './viscosity.ts';

/**
 * How many times shorter pot life, gel and cure are for each 10 K more. Published by resin makers as "every 18 F halves
 * it", with 1.5 to 2.5 for single products; the shop may set its own.
 */
export const usualFactorPer10K = 2;

/**
 * Pot life, gel time or any other time of the cure (s) at `temperature` (K): through the two nearest readings
 * (Arrhenius), or from a single one by the factor for each 10 K: t = t_ref f^((T_ref - T)/10).
 */
export function workingTimeAt(
  readings: readonly AtTemperature[],
  temperature: number,
  factorPer10K = usualFactorPer10K,
): Outcome<Converted> {
  const only = readings[0];
  if (only === undefined) return { problem: 'no time is given' };
  const pair = nearestPair(readings, temperature);
  if (pair === undefined) {
    const method = only.temperature === temperature ? 'read' : 'usual rule';
    return following(timeByFactor(only, temperature, factorPer10K), (value) => ({ value, method }));
  }
  const energy = activationEnergy(...pair);
  if (isImpossible(energy)) return energy;
  if (energy <= 0) return { problem: 'the times given do not get shorter as it gets warmer' };
  return following(arrhenius(pair[0], energy, temperature), (value) => ({
    value,
    method: methodOf(pair, temperature),
  }));
}

export function timeByFactor(reading: AtTemperature, temperature: number, factorPer10K = usualFactorPer10K): Outcome {
  return given(
    [
      positive('the time on the data sheet', reading.value),
      positive('the absolute temperature', temperature),
      demand(factorPer10K > 1, 'the factor for each 10 K must be more than 1'),
    ],
    () => reading.value * factorPer10K ** ((reading.temperature - temperature) / 10),
  );
}

/** The factor for each 10 K that two readings come to: (t1/t2)^(10 / (T2 - T1)). */
export function factorPer10K(a: AtTemperature, b: AtTemperature): Outcome {
  return given(
    [
      positive('each time on the data sheet', Math.min(a.value, b.value)),
      demand(a.temperature !== b.temperature, 'two times at the same temperature do not tell how it changes'),
    ],
    () => (a.value / b.value) ** (10 / (b.temperature - a.temperature)),
  );
}

/** A gel time (s) read at a dose of catalyst (a share by weight). */
export interface AtDose {
  readonly dose: number;
  readonly value: number;
}

/**
 * Gel time (s) at another dose of catalyst, through two readings: a power law, straight on double logarithmic paper.
 */
export function gelAtDose(a: AtDose, b: AtDose, dose: number): Outcome {
  return given(
    [
      positive('each gel time', Math.min(a.value, b.value)),
      positive('each dose of catalyst', Math.min(a.dose, b.dose, dose)),
      demand(a.dose !== b.dose, 'two gel times at the same dose do not tell how it changes'),
    ],
    () => a.value * (dose / a.dose) ** (Math.log(b.value / a.value) / Math.log(b.dose / a.dose)),
  );
}

import { demand, given, type Outcome, positive } from '../outcome.ts';

/** A value read from a data sheet at a temperature (K). */
export interface AtTemperature {
  readonly temperature: number;
  readonly value: number;
}

/** Molar gas constant, J/(mol K), exact since 2019. Source: SI Brochure, 9th edition. */
export const gasConstant = 8.314462618;

/**
 * A value at `temperature` (K) that falls with heat as exp(E / RT), from one reading and its activation energy (J/mol).
 * Source: Arrhenius 1889; for the viscosity of liquids Andrade 1930.
 */
export function arrhenius(reading: AtTemperature, energy: number, temperature: number): Outcome {
  return given(
    [
      positive('the value on the data sheet', reading.value),
      positive('the absolute temperature of the data sheet', reading.temperature),
      positive('the absolute temperature', temperature),
      positive('the activation energy', energy),
    ],
    () => reading.value * Math.exp((energy / gasConstant) * (1 / temperature - 1 / reading.temperature)),
  );
}

/**
 * Activation energy (J/mol) through two readings at different temperatures; negative where the value rises with heat.
 */
export function activationEnergy(a: AtTemperature, b: AtTemperature): Outcome {
  return given(
    [
      ...[a, b].flatMap((r) => [
        positive('the value on the data sheet', r.value),
        positive('the absolute temperature of the data sheet', r.temperature),
      ]),
      demand(a.temperature !== b.temperature, 'two values at the same temperature do not tell how it changes'),
    ],
    () => (gasConstant * Math.log(a.value / b.value)) / (1 / a.temperature - 1 / b.temperature),
  );
}

/**
 * The two readings next to a temperature: those on both sides of it, or the last two before it. Sorted by temperature.
 */
export function nearestPair(
  readings: readonly AtTemperature[],
  temperature: number,
): readonly [AtTemperature, AtTemperature] | undefined {
  const sorted = [...readings]
    .sort((a, b) => a.temperature - b.temperature)
    .filter((r, i, all) => i === 0 || r.temperature !== all[i - 1]!.temperature);
  const above = sorted.findIndex((r) => r.temperature >= temperature);
  const high = above < 0 ? sorted.length - 1 : Math.max(1, above);
  const pair = [sorted[high - 1], sorted[high]] as const;
  return pair[0] !== undefined && pair[1] !== undefined ? [pair[0], pair[1]] : undefined;
}

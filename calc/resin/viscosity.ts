import { following, isImpossible, type Outcome } from '../outcome.ts';
import { type AtTemperature, activationEnergy, arrhenius, nearestPair } from './arrhenius.ts';

/**
 * Activation energy of the viscosity where only one reading is known, J/mol: 40 to 60 kJ/mol for infusion epoxies (from
 * memory).
 */
export const usualViscosityEnergy = 50_000;

/** How a value at another temperature was found. */
export type TemperatureMethod = 'read' | 'between readings' | 'beyond readings' | 'usual rule';

export interface Converted {
  readonly value: number;
  readonly method: TemperatureMethod;
}

/**
 * Viscosity (Pa s) of mixed resin at `temperature` (K): through the two nearest readings, or by the usual energy from
 * one.
 */
export function viscosityAt(readings: readonly AtTemperature[], temperature: number): Outcome<Converted> {
  const pair = nearestPair(readings, temperature);
  const only = readings[0];
  if (only === undefined) return { problem: 'no viscosity is given' };
  if (pair === undefined) {
    const method = only.temperature === temperature ? 'read' : 'usual rule';
    return following(arrhenius(only, usualViscosityEnergy, temperature), (value) => ({ value, method }));
  }
  const energy = activationEnergy(...pair);
  if (isImpossible(energy)) return energy;
  if (energy <= 0) return { problem: 'the viscosities given do not fall as the resin gets warmer' };
  return following(arrhenius(pair[0], energy, temperature), (value) => ({
    value,
    method: methodOf(pair, temperature),
  }));
}

/** Whether a temperature is one of two readings, between them or beyond. */
export function methodOf([low, high]: readonly [AtTemperature, AtTemperature], temperature: number): TemperatureMethod {
  if (temperature === low.temperature || temperature === high.temperature) return 'read';
  return temperature > low.temperature && temperature < high.temperature ? 'between readings' : 'beyond readings';
}

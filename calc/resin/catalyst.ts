import { fraction, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** How much catalyst goes into a batch. */
export interface CatalystDose {
  /** kg */
  readonly mass: number;
  /** m3 */
  readonly volume: number;
}

/**
 * Catalyst for `resinMass` (kg) at a dose by weight of the resin (0.015 is 1.5 %); `density` (kg/m3) is the catalyst's.
 */
export function doseByWeight(resinMass: number, dose: number, density: number): Outcome<CatalystDose> {
  return given(
    [
      notNegative('the mass of resin', resinMass),
      fraction('the dose of catalyst', dose),
      positive('the density of the catalyst', density),
    ],
    () => ({ mass: resinMass * dose, volume: (resinMass * dose) / density }),
  );
}

/** The dose by weight that a dose by volume is, with the densities (kg/m3) of the catalyst and of the resin. */
export function weightDoseOf(byVolume: number, catalystDensity: number, resinDensity: number): Outcome {
  return given(
    [
      fraction('the dose of catalyst', byVolume),
      positive('the density of the catalyst', catalystDensity),
      positive('the density of the resin', resinDensity),
    ],
    () => (byVolume * catalystDensity) / resinDensity,
  );
}

/** The share by which one step of the scale (kg) changes a dose of `mass` (kg): 1 g of 2.25 g is 44 %. */
export function stepOfDose(mass: number, step: number): Outcome {
  return given([positive('the mass of catalyst', mass), positive('the step of the scale', step)], () => step / mass);
}

/**
 * The smallest batch of resin (kg) whose catalyst is `steps` steps of the scale (kg); 20 steps keep the dose within 5 %
 * (common practice).
 */
export function smallestBatch(dose: number, step: number, steps = 20): Outcome {
  return given(
    [
      fraction('the dose of catalyst', dose),
      positive('the step of the scale', step),
      positive('the number of steps', steps),
    ],
    () => (steps * step) / dose,
  );
}

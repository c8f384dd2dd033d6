import { fraction, given, notNegative, type Outcome, positive } from '../outcome.ts';
import type { Densities } from './fraction.ts';

/** Resin (kg/m2) in a layer of cloth of areal weight `arealWeight` (kg/m2): w/rho_f (1-Vf)/Vf rho_r. No voids. */
export function resinArealWeight(arealWeight: number, byVolume: number, densities: Densities): Outcome {
  return given(
    [
      notNegative('the areal weight', arealWeight),
      fraction('the fibre fraction by volume', byVolume),
      positive('the density of the fibre', densities.fibre),
      positive('the density of the resin', densities.resin),
    ],
    () => ((arealWeight / densities.fibre) * (1 - byVolume) * densities.resin) / byVolume,
  );
}

/** Density of a laminate without voids, kg/m3, by the rule of mixtures. */
export function laminateDensity(byVolume: number, densities: Densities): Outcome {
  return given(
    [
      fraction('the fibre fraction by volume', byVolume),
      positive('the density of the fibre', densities.fibre),
      positive('the density of the resin', densities.resin),
    ],
    () => byVolume * densities.fibre + (1 - byVolume) * densities.resin,
  );
}

/** One fibre of a cloth of several: its areal weight (kg/m2) and density (kg/m3). */
export interface FibreShare {
  readonly arealWeight: number;
  readonly density: number;
}

/** Density of the fibres of a mixed cloth taken together, kg/m3: total mass over total volume. */
export function mixedFibreDensity(shares: readonly FibreShare[]): Outcome {
  const demands = shares.flatMap((s) => [
    positive('the areal weight of each fibre', s.arealWeight),
    positive('the density of each fibre', s.density),
  ]);
  return given(demands, () => {
    const mass = shares.reduce((sum, s) => sum + s.arealWeight, 0);
    const volume = shares.reduce((sum, s) => sum + s.arealWeight / s.density, 0);
    return volume > 0 ? mass / volume : { problem: 'a cloth needs at least one fibre' };
  });
}

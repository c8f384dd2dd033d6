import { fraction, given, notNegative, type Outcome, positive } from '../outcome.ts';
import { closestPacking, type Densities } from './fraction.ts';

/**
 * Thickness (m) of a layer of cloth in the laminate: t = w / (rho_f Vf); `arealWeight` kg/m2, fraction by volume. No
 * voids.
 */
export function layerThickness(arealWeight: number, fibreDensity: number, byVolume: number): Outcome {
  return given(
    [
      notNegative('the areal weight', arealWeight),
      positive('the density of the fibre', fibreDensity),
      fraction('the fibre fraction by volume', byVolume),
    ],
    () => arealWeight / (fibreDensity * byVolume),
  );
}

/**
 * Thickness (m) of a laminate from its areal weight of fibre (kg/m2) and its fibre fraction by weight: t = w (1/rho_f +
 * (1-psi) / (psi rho_r)). Source: the form used by class rules and ISO 12215-5; with 2560 and 1200 kg/m3 it is their
 * t[mm] = w (2.56/psi - 1.36) / 3.072.
 */
export function laminateThickness(arealWeight: number, byWeight: number, densities: Densities): Outcome {
  return given(
    [
      notNegative('the areal weight', arealWeight),
      fraction('the fibre fraction by weight', byWeight),
      positive('the density of the fibre', densities.fibre),
      positive('the density of the resin', densities.resin),
    ],
    () => arealWeight * (1 / densities.fibre + (1 - byWeight) / (byWeight * densities.resin)),
  );
}

/** Fibre fraction by volume from a measured thickness (m): Vf = w / (rho_f t). */
export function fibreByVolumeFromThickness(arealWeight: number, fibreDensity: number, thickness: number): Outcome {
  return given(
    [
      positive('the areal weight', arealWeight),
      positive('the density of the fibre', fibreDensity),
      positive('the thickness', thickness),
    ],
    () => {
      const found = arealWeight / (fibreDensity * thickness);
      return found <= closestPacking
        ? found
        : { problem: 'the laminate is thinner than fibres packed as closely as they go (90.7 % by volume)' };
    },
  );
}

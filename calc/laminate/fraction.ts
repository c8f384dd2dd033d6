import { fraction, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Densities of the fibre and of the cured resin, kg/m3. */
export interface Densities {
  readonly fibre: number;
  readonly resin: number;
}

const densityDemands = ({ fibre, resin }: Densities) => [
  positive('the density of the fibre', fibre),
  positive('the density of the resin', resin),
];

/**
 * Round fibres of one size, side by side, fill no more than this share of the room: pi / (2 sqrt 3), 0.907 (hexagonal
 * packing, Thue 1910). A fibre fraction by volume above it is impossible, not just unusual.
 */
export const closestPacking = Math.PI / (2 * Math.sqrt(3));

/** Fibre fraction by volume from that by weight, without voids: Vf = (x/rho_f) / (x/rho_f + (1-x)/rho_r). */
export function fibreByVolume(byWeight: number, densities: Densities): Outcome {
  return given([fraction('the fibre fraction by weight', byWeight), ...densityDemands(densities)], () => {
    const fibre = byWeight / densities.fibre;
    return fibre / (fibre + (1 - byWeight) / densities.resin);
  });
}

/** Fibre fraction by weight from that by volume, without voids. */
export function fibreByWeight(byVolume: number, densities: Densities): Outcome {
  return given([fraction('the fibre fraction by volume', byVolume), ...densityDemands(densities)], () => {
    const fibre = byVolume * densities.fibre;
    return fibre / (fibre + (1 - byVolume) * densities.resin);
  });
}

/** Fibre fraction by weight from how many times its own weight of resin a cloth takes: x = 1 / (1 + r). */
export function fibreByWeightFromRatio(resinToFibre: number): Outcome {
  return given([positive('the ratio of resin to fibre', resinToFibre)], () => 1 / (1 + resinToFibre));
}

/** Mass of resin to one of fibre, at a fibre fraction by volume: (1/Vf - 1) rho_r / rho_f. */
export function resinToFibreRatio(byVolume: number, densities: Densities): Outcome {
  return given(
    [fraction('the fibre fraction by volume', byVolume), ...densityDemands(densities)],
    () => ((1 / byVolume - 1) * densities.resin) / densities.fibre,
  );
}

/** Mass of resin (kg or kg/m2) in a laminate with this mass of fibre, at a fibre fraction by weight. */
export function resinForFibre(fibreMass: number, byWeight: number): Outcome {
  return given(
    [notNegative('the mass of fibre', fibreMass), fraction('the fibre fraction by weight', byWeight)],
    () => (fibreMass * (1 - byWeight)) / byWeight,
  );
}

/** Fibre fraction by weight of a part from what went in dry and what came out, kg or kg/m2. */
export function fibreByWeightFromMass(fibreMass: number, laminateMass: number): Outcome {
  return given([positive('the mass of fibre', fibreMass), positive('the mass of the laminate', laminateMass)], () =>
    laminateMass > fibreMass
      ? fibreMass / laminateMass
      : { problem: 'the laminate must weigh more than the fibre in it' },
  );
}

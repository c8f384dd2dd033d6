import { fraction, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Resin (kg) that stands in a tube or feed line: pi/4 d2 L rho. `bore` and `length` m, `density` kg/m3. */
export function resinInTube(bore: number, length: number, density: number): Outcome {
  return given(
    [
      positive('the bore of the tube', bore),
      notNegative('the length of the tube', length),
      positive('the density of the resin', density),
    ],
    () => (Math.PI / 4) * bore * bore * length * density,
  );
}

/** Resin (kg/m2) that an open mesh or mat holds: thickness (m) times its void share times the density (kg/m3). */
export function meshUptake(thickness: number, voidShare: number, density: number): Outcome {
  return given(
    [
      positive('the thickness of the mesh', thickness),
      fraction('the void share of the mesh', voidShare),
      positive('the density of the resin', density),
    ],
    () => thickness * voidShare * density,
  );
}

/**
 * Resin (kg) that a sheet keeps which is thrown away: `uptake` kg/m2 over `area` m2 (peel ply, mesh, bleeder,
 * breather).
 */
export function sheetUptake(area: number, uptake: number): Outcome {
  return given([notNegative('the area of the sheet', area), notNegative('the uptake', uptake)], () => area * uptake);
}

/** Resin (kg) of a film on a part: wet thickness (m) times area (m2) times density (kg/m3). */
export function filmMass(wetThickness: number, area: number, density: number): Outcome {
  return given(
    [
      notNegative('the wet film', wetThickness),
      notNegative('the area', area),
      positive('the density of the coat', density),
    ],
    () => wetThickness * area * density,
  );
}

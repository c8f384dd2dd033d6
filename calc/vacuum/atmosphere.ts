import { demand, given, type Outcome } from '../outcome.ts';

/** Pressure of the standard atmosphere at sea level, Pa. Source: ISO 2533:1975. */
export const seaLevelPressure = 101_325;

/** Standard acceleration of gravity, m/s2. Source: 3rd CGPM 1901. */
export const gravity = 9.80665;

/**
 * Air pressure (Pa) of the standard atmosphere at an elevation (m) from -2000 to 11 000: p0 (1 - L h / T0)^(g / (R L))
 * with T0 288.15 K, L 0.0065 K/m, R 287.05287 J/(kg K). Weather moves the real one by some 3 % either way. Source: ISO
 * 2533:1975.
 */
export function standardPressure(elevation: number): Outcome {
  const known = elevation >= -2000 && elevation <= 11_000;
  return given([demand(known, 'the elevation must lie between -2000 m and 11 000 m')], () => {
    const lapse = 0.0065;
    return seaLevelPressure * (1 - (lapse * elevation) / 288.15) ** (gravity / (287.05287 * lapse));
  });
}

import { demand, given, notNegative, type Outcome, positive } from '../outcome.ts';
import { gravity, seaLevelPressure } from './atmosphere.ts';

/** What a pump is sold by: the absolute pressure that it leaves, or the gauge that it pulls at sea level; Pa. */
export type PumpRating = { readonly absolute: number } | { readonly gaugeAtSeaLevel: number };

/**
 * Absolute pressure (Pa) that a pump leaves where the air has `barometer` (Pa). An absolute rating holds everywhere; a
 * pump rated by gauge leaves the same share of the air that it pumps against (its clearance sets the ratio; from
 * memory).
 */
export function pumpLeaves(rating: PumpRating, barometer: number): Outcome {
  if ('absolute' in rating) {
    return given(
      [
        positive('the air pressure', barometer),
        notNegative('the pressure that the pump leaves', rating.absolute),
        demand(rating.absolute < barometer, 'the pump leaves as much pressure as the air has here: it pulls nothing'),
      ],
      () => rating.absolute,
    );
  }
  const { gaugeAtSeaLevel } = rating;
  return given(
    [
      positive('the air pressure', barometer),
      positive('the gauge reading of the pump', gaugeAtSeaLevel),
      demand(gaugeAtSeaLevel <= seaLevelPressure, 'no pump pulls more than the air at sea level pushes (1013 mbar)'),
    ],
    () => (1 - gaugeAtSeaLevel / seaLevelPressure) * barometer,
  );
}

/** Pressure of a column of resin, Pa: rho g h. `rise` (m) is negative where the resin runs down. */
export function headOf(density: number, rise: number): Outcome {
  return given([positive('the density of the resin', density)], () => density * gravity * rise);
}

/** Pressure (Pa) that drives resin into the bag: air outside, less what is left in the bag, less the head. */
export function drivingPressure(barometer: number, bag: number, head = 0): Outcome {
  return given(
    [
      positive('the air pressure', barometer),
      notNegative('the pressure in the bag', bag),
      demand(bag < barometer, 'the bag has as much pressure as the air outside: nothing drives the resin'),
    ],
    () => {
      const left = barometer - bag - head;
      return left > 0 ? left : { problem: 'the resin must rise higher than the vacuum can lift it' };
    },
  );
}

import { demand, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Absolute pressure (Pa) from a vacuum gauge, which counts down from the air outside (`barometer`, Pa). */
export function absoluteFromGauge(gauge: number, barometer: number): Outcome {
  return given(
    [
      positive('the air pressure', barometer),
      notNegative('the gauge reading', gauge),
      demand(gauge <= barometer, 'the gauge reads more vacuum than the air outside has pressure to give'),
    ],
    () => barometer - gauge,
  );
}

/** What a vacuum gauge reads (Pa below the air outside) at an absolute pressure (Pa). */
export function gaugeFromAbsolute(absolute: number, barometer: number): Outcome {
  return given(
    [
      positive('the air pressure', barometer),
      notNegative('the absolute pressure', absolute),
      demand(absolute <= barometer, 'the pressure in the bag is more than that of the air outside'),
    ],
    () => barometer - absolute,
  );
}

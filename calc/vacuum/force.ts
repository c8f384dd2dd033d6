import { demand, given, notNegative, type Outcome, positive } from '../outcome.ts';
import { gravity } from './atmosphere.ts';

/** What the air presses on a bag with. */
export interface BagForce {
  /** Pa */
  readonly pressure: number;
  /** N on the whole area */
  readonly force: number;
  /** mass whose weight is the same, kg */
  readonly mass: number;
}

/** Force on a bag of `area` (m2) with `absolute` pressure (Pa) in it where the air has `barometer` (Pa). */
export function bagForce(absolute: number, barometer: number, area: number): Outcome<BagForce> {
  return given(
    [
      notNegative('the pressure in the bag', absolute),
      positive('the air pressure', barometer),
      notNegative('the area', area),
      demand(absolute <= barometer, 'the pressure in the bag is more than that of the air outside'),
    ],
    () => {
      const pressure = barometer - absolute;
      return { pressure, force: pressure * area, mass: (pressure * area) / gravity };
    },
  );
}

import { demand, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** How a piece wider than its roll is made up of lanes side by side. */
export interface Lanes {
  readonly lanes: number;
  readonly joins: number;
  /** width that the laps take besides the piece itself, m */
  readonly lapped: number;
}

/**
 * Lanes of a roll (`rollWidth`, m) that cover a piece `width` (m) across the roll, lapped by `lap` (m), 0 for butt
 * joins.
 */
export function lanesFor(width: number, rollWidth: number, lap: number): Outcome<Lanes> {
  return given(
    [
      positive('the width of the piece', width),
      positive('the width of the roll', rollWidth),
      notNegative('the lap', lap),
      demand(lap < rollWidth, 'the lap is as wide as the roll'),
    ],
    () => {
      const lanes = Math.max(1, Math.ceil((width - lap) / (rollWidth - lap) - 1e-9));
      return { lanes, joins: lanes - 1, lapped: (lanes - 1) * lap };
    },
  );
}

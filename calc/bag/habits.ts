import { quantity } from '../figure/figure.ts';
import type { Usual } from '../figure/habit.ts';
import { LENGTH } from '../quantity/dimension.ts';

const length = (habit: string, what: string, metres: number, source: string): Usual => ({
  habit,
  what,
  value: quantity(metres, LENGTH),
  source,
});

/** How far sheets run past the edge of the part (negative: short of it) where the step does not say. */
export const SHEET_PAST: Readonly<Record<string, Usual>> = {
  peel: length('peel', 'peel ply past the edge', 0.05, 'common practice: 30 to 100 mm'),
  perforated: length('perforated', 'perforated film past the edge', 0.02, 'common practice: 20 mm'),
  film: length('film', 'release film past the edge', 0.02, 'common practice: 20 mm'),
  mesh: length('mesh', 'mesh past the edge', -0.04, 'common practice: 25 to 50 mm short of the edge'),
  bleeder: length('bleeder', 'bleeder past the edge', 0, 'common practice: to the edge of the part'),
  breather: length('breather', 'breather past the edge', 0.08, 'common practice: out to the vacuum port'),
};

/** From the outermost thing under the bag to the sealant tape. */
export const TAPE_CLEARANCE = length(
  'tape',
  'from the outermost sheet or line to the tape',
  0.02,
  'common practice: 20 mm clear of cloth, so that no fibre lies under the tape',
);
export const PLEAT_HEIGHT = length('pleat', 'height of a pleat', 0.04, 'common practice: 40 mm');
export const HEM = length('hem', 'film outside the inner edge of the tape', 0.05, 'common practice: 50 mm');
/** From pot or trap to the bag, each line. */
export const TUBE_LENGTH = length('tube', 'tube from the pot or the trap to the bag', 1.5, 'from memory: 1 to 2 m');
export const FLANGE = length(
  'released',
  'flange that is released with the part',
  0.1,
  'common practice: 100 to 150 mm',
);

import { quantity } from '../figure/figure.ts';
import type { Usual } from '../figure/habit.ts';
import { ANGLE } from '../quantity/dimension.ts';

/**
 * How far the fibres of a cloth shear out of the square before it folds, by how it is made. From memory, of picture-frame tests
 * and of the bench: lay a piece over a bowl and look.
 */
export const DRAPE_WOVEN: Usual = {
  habit: 'drape_woven',
  what: 'how far woven cloth shears before it folds',
  value: quantity(40 * 0.017453292519943295, ANGLE),
  source: 'from memory: 35 to 50 deg, twill and satin more than plain weave',
};
export const DRAPE_STITCHED: Usual = {
  habit: 'drape_stitched',
  what: 'how far stitched cloth of two directions shears before it folds',
  value: quantity(30 * 0.017453292519943295, ANGLE),
  source: 'from memory: 25 to 40 deg, by the stitching',
};
export const DRAPE_BRAID: Usual = {
  habit: 'drape_braid',
  what: 'how far braid shears before it folds',
  value: quantity(45 * 0.017453292519943295, ANGLE),
  source: 'from memory',
};
export const DRAPE_RANDOM: Usual = {
  habit: 'drape_random',
  what: 'how far a wet mat gives before it folds or tears',
  value: quantity(40 * 0.017453292519943295, ANGLE),
  source: 'from memory: a mat gives once its binder is wet through',
};
export const DRAPE_UNI: Usual = {
  habit: 'drape_uni',
  what: 'how far cloth of one direction, or of three and more, shears before it folds',
  value: quantity(10 * 0.017453292519943295, ANGLE),
  source: 'from memory: its threads hold each other',
};

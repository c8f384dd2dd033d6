import { quantity } from '../figure/figure.ts';
import type { Usual } from '../figure/habit.ts';
import type { ClothStyle } from '../model/material.ts';
import { LENGTH, NUMBER } from '../quantity/dimension.ts';

/** The widest dart that is cut, at the free edge. */
export const WIDEST_DART: Usual = {
  habit: 'dart',
  what: 'the widest dart',
  value: quantity(0.02, LENGTH),
  source: 'common practice: darts of 20 mm close without a lump',
};

/** How far short of the face a dart ends. */
export const DART_KEEP_OFF: Usual = {
  habit: 'dart_keep_off',
  what: 'distance of a dart from the face',
  value: quantity(0.005, LENGTH),
  source: 'common practice: a dart ends 5 mm short of the face',
};

/** How far a wrapped ply lies on the face that it lands on. */
export const LANDING: Usual = {
  habit: 'landing',
  what: 'landing of a wrapped ply',
  value: quantity(0.025, LENGTH),
  source: 'common practice: 25 to 50 mm, from memory',
};

/** Lap of joined lanes of one piece. */
export const JOIN_LAP: Usual = {
  habit: 'overlap',
  what: 'lap of a join',
  value: quantity(0.025, LENGTH),
  source: 'common practice: laps of 25 to 50 mm on small craft',
};

/** Share of what is taken off the roll or the sheet that is thrown away. */
export const CLOTH_WASTE: Usual = {
  habit: 'cloth_waste',
  what: 'cutting waste of cloth',
  value: quantity(0.15, NUMBER),
  source: 'common practice: 10 to 20 % of cloth; until the pieces are laid out on the roll',
};
export const CORE_WASTE: Usual = {
  habit: 'core_waste',
  what: 'cutting waste of core',
  value: quantity(0.1, NUMBER),
  source: 'common practice: 5 to 15 % of core',
};

/** Share of excess length that a cloth takes up by shear at an edge, where the cloth does not say. From memory: try it on a corner. */
export const USUAL_SHEAR: Readonly<Record<ClothStyle, number>> = {
  random: 0.4,
  woven: 0.5,
  stitched: 0.3,
  uni: 0.1,
  braid: 0.6,
};

/** A V narrower than this is not worth cutting out: one slit, and its edges lap. */
export const NARROWEST_DART: Usual = {
  habit: 'dart_narrowest',
  what: 'the narrowest dart that is cut out; a narrower one is a slit that laps',
  value: quantity(0.005, LENGTH),
  source: 'common practice, from memory: less than 5 mm is slit and lapped',
};

/** Cloth that stays between two darts at the free edge: a narrower tongue frays away. */
export const DART_GAP: Usual = {
  habit: 'dart_gap',
  what: 'cloth between two darts',
  value: quantity(0.01, LENGTH),
  source: 'from memory: 10 mm, a narrower tongue frays away',
};

/** Excess that lies flat by itself. */
export const LEAST_EXCESS: Usual = {
  habit: 'dart_least',
  what: 'the excess at a bend that lies flat without a cut',
  value: quantity(0.002, LENGTH),
  source: 'from memory: 2 mm are pressed flat',
};

/** How far the joins of plies that follow each other stand apart. */
export const STAGGER: Usual = {
  habit: 'stagger',
  what: 'joins of successive plies apart',
  value: quantity(0.025, LENGTH),
  source: 'trade magazine 2021: 25 to 38 mm',
};

import { quantity } from '../figure/figure.ts';
import type { Usual } from '../figure/habit.ts';
import { AREAL_WEIGHT, LENGTH, MASS, NUMBER } from '../quantity/dimension.ts';

/** What materials take that do not say, and what every shot takes. */
export const CORE_SURFACE: Usual = {
  habit: 'core_surface',
  what: 'resin in the cut cells of one face',
  value: quantity(0.2, AREAL_WEIGHT),
  source: 'from memory: 0.1 to 0.3 kg/m2 a face, by the size of the cells',
};
export const PEEL_UPTAKE: Usual = {
  habit: 'peel_uptake',
  what: 'resin in peel ply',
  value: quantity(0.05, AREAL_WEIGHT),
  source: 'common practice: 30 to 50 g/m2, up to 100 g/m2 infused',
};
export const MESH_UPTAKE: Usual = {
  habit: 'mesh_uptake',
  what: 'resin in flow mesh',
  value: quantity(0.5, AREAL_WEIGHT),
  source: 'from memory: 300 to 700 g/m2 for one layer',
};
export const POT_RESIDUE: Usual = {
  habit: 'pot_residue',
  what: 'resin left in pot and trap',
  value: quantity(0.3, MASS),
  source: 'from memory: 0.2 to 0.5 kg a shot',
};
export const MIX_ALLOWANCE: Usual = {
  habit: 'allowance',
  what: 'allowance on the resin to mix',
  value: quantity(0.1, NUMBER),
  source: 'common practice: 10 % (5 to 15 %, less on large parts), held back unmixed',
};
export const BED_THICKNESS: Usual = {
  habit: 'bed',
  what: 'thickness of a bed of paste',
  value: quantity(0.001, LENGTH),
  source: 'common practice: 1 mm',
};

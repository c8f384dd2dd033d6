import type { Bench, Usual } from '../../../calc/figure/index.ts';
import type { ProcessKind } from '../../../calc/model/index.ts';
import { habitOf } from './habit.ts';
import { share } from './shown.ts';

/** The most fibre by volume that a process packs, for mat and for other cloth. */
const PACKED: Readonly<Record<ProcessKind, { readonly mat: Usual; readonly cloth: Usual }>> = {
  hand: {
    cloth: {
      habit: 'packed_hand',
      what: 'most fibre by volume in cloth that is laid by hand',
      value: share(0.4),
      source: "home-builders' published figure: 0.60 by weight of glass",
    },
    mat: {
      habit: 'packed_hand_mat',
      what: 'most fibre by volume in mat that is laid by hand',
      value: share(0.24),
      source: 'from memory',
    },
  },
  bagged: {
    cloth: {
      habit: 'packed_bagged',
      what: 'most fibre by volume in cloth in a wet layup under a bag',
      value: share(0.55),
      source: 'from memory',
    },
    mat: {
      habit: 'packed_bagged_mat',
      what: 'most fibre by volume in mat in a wet layup under a bag',
      value: share(0.3),
      source: 'from memory',
    },
  },
  infusion: {
    cloth: {
      habit: 'packed_infusion',
      what: 'most fibre by volume in cloth that is infused',
      value: share(0.62),
      source: 'common practice',
    },
    mat: {
      habit: 'packed_infusion_mat',
      what: 'most fibre by volume in mat that is infused',
      value: share(0.32),
      source: 'from memory',
    },
  },
  prepreg: {
    cloth: {
      habit: 'packed_prepreg',
      what: 'most fibre by volume in cloth of a prepreg',
      value: share(0.66),
      source: 'from memory',
    },
    mat: {
      habit: 'packed_prepreg_mat',
      what: 'most fibre by volume in mat of a prepreg',
      value: share(0.35),
      source: 'from memory',
    },
  },
};

export const mostPacked = (bench: Bench, kind: ProcessKind, cloth: 'mat' | 'cloth'): number =>
  habitOf(bench, PACKED[kind][cloth]);

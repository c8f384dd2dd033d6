import type { ClothStyle } from '../model/material.ts';
import type { ProcessKind } from '../model/process.ts';

/** A fibre fraction by volume that the trade expects where nobody says otherwise. */
export interface DefaultFraction {
  readonly byVolume: number;
  readonly source: string;
}

const typical = (byVolume: number, source: string): DefaultFraction => ({ byVolume, source });

/*
 * By volume, so that one table serves glass, carbon and flax alike. Beside each, what it comes to by weight for E-glass (2560
 * kg/m3) in 1150 kg/m3 resin, which is how the trade speaks of it. All common practice, from memory unless a page is named.
 */
const HAND: Record<ClothStyle, DefaultFraction> = {
  random: typical(
    0.16,
    'common practice: mat laid by hand, 30 % glass by weight (2.5 times its weight of resin is 29 %)',
  ),
  woven: typical(0.31, 'common practice: woven cloth laid by hand, 50 % glass by weight'),
  stitched: typical(0.31, 'common practice: stitched cloth laid by hand, 50 % glass by weight'),
  uni: typical(0.35, 'common practice: unidirectional laid by hand, 54 % glass by weight'),
  braid: typical(0.31, 'common practice: braid laid by hand, 50 % glass by weight'),
};
const BAGGED: Record<ClothStyle, DefaultFraction> = {
  random: typical(0.22, 'common practice: mat under a bag, 39 % glass by weight'),
  woven: typical(0.4, 'common practice: wet layup under a bag, 60 % glass by weight (resin in the low to mid 40s)'),
  stitched: typical(0.4, 'common practice: wet layup under a bag, 60 % glass by weight (resin in the low to mid 40s)'),
  uni: typical(0.45, 'common practice: unidirectional under a bag, 65 % glass by weight'),
  braid: typical(0.38, 'common practice: braid under a bag, 58 % glass by weight'),
};
const INFUSED: Record<ClothStyle, DefaultFraction> = {
  random: typical(0.25, 'common practice: infused mat, 43 % glass by weight'),
  woven: typical(0.48, 'common practice: infused woven cloth, 67 % glass by weight (55 to 70 % are met with)'),
  stitched: typical(0.5, 'common practice: infused stitched cloth, 69 % glass by weight (65 to 72 % are met with)'),
  uni: typical(0.54, 'common practice: infused unidirectional, 72 % glass by weight'),
  braid: typical(0.48, 'common practice: infused braid, 67 % glass by weight'),
};
const PREPREG: Record<ClothStyle, DefaultFraction> = {
  random: typical(0.3, 'common practice: mat prepreg, oven and vacuum'),
  woven: typical(0.5, 'common practice: woven prepreg, oven and vacuum'),
  stitched: typical(0.52, 'common practice: stitched prepreg, oven and vacuum'),
  uni: typical(0.56, 'common practice: unidirectional prepreg, oven and vacuum'),
  braid: typical(0.5, 'common practice: braid prepreg, oven and vacuum'),
};

/** Fibre fraction by process and kind of cloth, for cloth that says nothing itself. */
export const FRACTION_DEFAULTS: Readonly<Record<ProcessKind, Readonly<Record<ClothStyle, DefaultFraction>>>> = {
  hand: HAND,
  bagged: BAGGED,
  infusion: INFUSED,
  prepreg: PREPREG,
};

/** The words with which a cloth says for which process its fraction holds: `fraction 52 % by volume infused`. */
export const PROCESS_WORDS: Readonly<Record<ProcessKind, readonly string[]>> = {
  hand: ['hand'],
  bagged: ['bagged'],
  infusion: ['infused', 'infusion'],
  prepreg: ['prepreg'],
};

import type { EntryKey } from './place.ts';
import type { Amount, AmountRange, Fact, Remarks } from './value.ts';

export type MaterialKind =
  | 'fibre'
  | 'fabric'
  | 'prepreg'
  | 'resin'
  | 'gelcoat'
  | 'catalyst'
  | 'paste'
  | 'core'
  | 'consumable';

export type ClothStyle = 'random' | 'woven' | 'stitched' | 'uni' | 'braid';

/** One direction of a cloth: kg/m2 at an angle from the warp (rad); no angle for a random mat. */
export interface ClothLayer {
  readonly angle?: Amount;
  readonly arealWeight: Amount;
}

export interface Cloth {
  readonly style: ClothStyle;
  /** in order from the roll's underside */
  readonly layers: readonly ClothLayer[];
}

export type PricePer = 'area' | 'length' | 'mass' | 'volume' | 'piece';

export interface Price {
  /** money per m2, m, kg, m3 or piece; `amount.currency` holds the ISO 4217 code */
  readonly amount: Amount;
  readonly per: PricePer;
  /** a sheet price holds at this thickness (m) */
  readonly thickness?: Amount;
}

/** `viscosity 290 mPa.s at 23 degC`; `gel 18 min at 20 degC with 1.5 % by weight`; `pot_life 110 min at 23 degC for 150 g`. */
export interface AtCondition {
  readonly value: Amount;
  readonly high?: Amount;
  readonly temperature?: Amount;
  readonly mass?: Amount;
  readonly catalyst?: Amount;
  readonly after?: Amount;
  readonly thickness?: Amount;
  readonly fibreFraction?: Amount;
  readonly per?: string;
}

/** `52 % by volume infused`, `resin 42 % by weight` */
export interface Fraction {
  readonly of: 'fibre' | 'resin';
  readonly amount: Amount;
  readonly process?: string;
}

export interface CatalystDose {
  readonly material: string;
  readonly dose?: Amount;
  readonly range?: AmountRange;
}

export interface FillerShare {
  readonly material: string;
  readonly share: Amount;
}

/**
 * A material with every fact that the notation knows; which ones make sense follows from `kind` (language/words says so).
 * Repeated lines are lists. Facts that a `like` takes over keep the place of the entry that they come from.
 */
export interface Material extends Remarks {
  readonly entry: EntryKey;
  readonly kind: MaterialKind;
  readonly name: string;
  readonly title?: string;
  readonly origin: 'workspace' | 'stock';
  /** 'stock', or the name of another material */
  readonly like?: string;
  /** where the values come from that carry no source of their own */
  readonly source?: string;

  readonly fibre?: Fact<string>;
  readonly cloth?: Fact<Cloth>;
  readonly binder?: Fact<string>;
  readonly sizing?: Fact<string>;
  readonly fractions?: readonly Fact<Fraction>[];
  readonly roll?: Fact<{ readonly width: Amount; readonly length?: Amount }>;
  readonly sleeve?: Fact<{ readonly bore: Amount; readonly length?: Amount }>;
  readonly prices?: readonly Fact<Price>[];
  readonly permeability?: readonly Fact<AtCondition>[];
  /** the share of excess length that the cloth takes up by shear (ratio) */
  readonly shear?: Fact<Amount>;
  readonly dry?: Fact<{ readonly time: Amount; readonly temperature?: Amount; readonly useWithin?: Amount }>;
  readonly useWithin?: Fact<Amount>;

  readonly family?: Fact<string>;
  readonly mix?: Fact<{ readonly ratio: readonly number[]; readonly basis?: string }>;
  readonly tolerance?: Fact<Amount>;
  readonly accelerated?: Fact<true>;
  readonly airInhibited?: Fact<true>;
  /** its face closes with wax, and nothing laid on it bonds */
  readonly waxed?: Fact<true>;
  readonly catalyst?: Fact<CatalystDose>;
  readonly styrene?: Fact<Amount>;
  readonly density?: Fact<Amount>;
  readonly viscosity?: readonly Fact<AtCondition>[];
  readonly potLife?: readonly Fact<AtCondition>[];
  readonly openTime?: readonly Fact<AtCondition>[];
  readonly gel?: readonly Fact<AtCondition>[];
  readonly recoat?: readonly Fact<AtCondition>[];
  readonly laminate?: readonly Fact<AtCondition>[];
  readonly demould?: readonly Fact<AtCondition>[];
  readonly cure?: readonly Fact<AtCondition>[];
  readonly postcure?: readonly Fact<AtCondition>[];
  readonly glassTransition?: readonly Fact<AtCondition>[];
  readonly barcol?: Fact<Amount>;
  readonly wetFilm?: Fact<AmountRange>;
  readonly deepestVacuum?: Fact<Amount>;
  readonly madeFrom?: Fact<string>;
  readonly fillers?: readonly Fact<FillerShare>[];
  /** of a prepreg */
  readonly freezer?: Fact<AtCondition>;
  readonly outLife?: Fact<AtCondition>;
  readonly thaw?: Fact<Amount>;

  readonly modulus?: readonly Fact<AtCondition>[];
  readonly strength?: readonly Fact<AtCondition>[];
  readonly strain?: Fact<Amount>;
  readonly poisson?: Fact<Amount>;
  readonly shearModulus?: Fact<Amount>;
  readonly shearStrength?: Fact<Amount>;
  readonly compression?: Fact<Amount>;
  readonly sheet?: Fact<{ readonly length: Amount; readonly width: Amount }>;
  readonly resists?: readonly Fact<string>[];
  readonly attackedBy?: readonly Fact<string>[];
  readonly limit?: Fact<Amount>;
  /** smallest cold-bend radius (m) at a thickness */
  readonly bends?: readonly Fact<AtCondition>[];
  /** resin that the cut cells of one face take, kg/m2 */
  readonly surface?: Fact<Amount>;
  readonly moisture?: Fact<Amount>;
  readonly expands?: Fact<Amount>;

  /** of a consumable: release, tape, peel, mesh, ... */
  readonly consumableKind?: Fact<string>;
  readonly bore?: Fact<Amount>;
  readonly width?: Fact<Amount>;
  readonly thickness?: Fact<Amount>;
  /** share of open area of a perforated film (ratio) */
  readonly openArea?: Fact<Amount>;
  /** kg/m2 of itself */
  readonly arealWeight?: Fact<Amount>;
  /** m2 per kg or m3, or kg/m2 per coat */
  readonly coverage?: Fact<Amount>;
  /** resin that it keeps, kg/m2 */
  readonly takes?: Fact<Amount>;
  readonly life?: Fact<Amount>;
  /** of what colours a face: dark, so that it gets hot in the sun */
  readonly dark?: Fact<true>;
}

/** What a new recipe may be asked to be: data for the questions and for the text that is written from the answers. */

export const processKinds = ['hand', 'bagged', 'infusion', 'prepreg'] as const;
export type ProcessKind = (typeof processKinds)[number];

export const outlineKinds = ['rectangle', 'rounded', 'circle', 'ellipse', 'capsule'] as const;
export type OutlineKind = (typeof outlineKinds)[number];

/** Finished size in metres; a circle has its diameter as length and as width. */
export interface Outline {
  readonly kind: OutlineKind;
  readonly length: number;
  readonly width: number;
}

/** A core of the stock library, thickness in metres; without one the part is a plain laminate. */
export interface Core {
  readonly material: string;
  readonly thickness: number;
}

export interface RecipeAnswers {
  /** name of the recipe: a letter, then letters, digits and underscores */
  readonly name: string;
  readonly process: ProcessKind;
  readonly outline: Outline;
  /** fabric or prepreg of the skins, by its name in the stock library */
  readonly fabric: string;
  readonly core?: Core;
}

/** Cloth that is offered for the skins of each process; the first is the usual one. */
export const fabricsOf: Readonly<Record<ProcessKind, readonly string[]>> = {
  hand: ['biax_440', 'biax_600', 'woven_roving_600', 'glass_twill_280'],
  bagged: ['carbon_twill_200', 'carbon_biax_300', 'glass_twill_280', 'biax_440'],
  infusion: ['biax_440', 'biax_600', 'triax_750', 'carbon_biax_300'],
  prepreg: ['carbon_prepreg_200', 'glass_prepreg_300'],
};

/** Cores that stand the resin and the heat of each process; the first is the usual one. */
export const coresOf: Readonly<Record<ProcessKind, readonly string[]>> = {
  hand: ['foam_pvc_80', 'balsa_150'],
  bagged: ['foam_pvc_80', 'foam_pet_100', 'balsa_150'],
  infusion: ['foam_pvc_80', 'foam_san_85', 'balsa_150'],
  prepreg: ['honeycomb_48'],
};

/** Core thicknesses that are offered, metres. */
export const coreThicknesses: readonly number[] = [0.006, 0.01, 0.015, 0.02];

/** Smallest and largest finished size of a new recipe, metres. */
export const sizeLimits = { least: 0.3, most: 2 } as const;

export const isRecipeName = (name: string): boolean => /^[A-Za-z]\w{0,59}$/.test(name);

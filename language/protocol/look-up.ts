import type { WirePlace, WirePosition, WireRange } from './place.ts';

/** A material by its name, or the one whose name stands at a position. */
export interface MaterialAsked {
  readonly material?: string;
  readonly at?: { readonly uri: string; readonly position: WirePosition };
}

/** Request `laybook/materials`: the names that can be asked about, those that recipes use first. */
export const materialsRequest = 'laybook/materials';
export interface MaterialsResult {
  /** the one at the position */
  readonly here?: string;
  readonly materials: readonly MaterialChoice[];
}
export interface MaterialChoice {
  readonly name: string;
  /** `fabric`, `resin` ... */
  readonly kind: string;
  readonly title?: string;
  /** recipes that use it */
  readonly recipes: number;
}

/** Request `laybook/findUses`: the recipes that use a material, with what they weigh and cost. */
export const findUsesRequest = 'laybook/findUses';
export interface FindUsesResult {
  readonly material?: string;
  readonly recipes: readonly UsingRecipe[];
}
export interface UsingRecipe {
  readonly recipe: string;
  readonly size?: string;
  readonly place?: WirePlace;
  /** the lines that name it: `ply outer`, `infusion with` */
  readonly uses: readonly { readonly words: string; readonly place: WirePlace }[];
  readonly figures: Readonly<Record<ComparedFigure, string>>;
}

export type ComparedFigure = 'mass' | 'cost' | 'thickness';

/** Request `laybook/compareMaterials`: what recipes would come to with another material. Nothing is edited. */
export const compareMaterialsRequest = 'laybook/compareMaterials';
export interface CompareMaterialsParams extends MaterialAsked {
  /** this recipe alone; else all that use the material */
  readonly recipe?: string;
}
export interface CompareMaterialsResult {
  readonly material?: string;
  readonly recipes: readonly ComparedRecipe[];
  readonly candidates: readonly Candidate[];
}
export interface ComparedRecipe {
  readonly recipe: string;
  readonly figures: Readonly<Record<ComparedFigure, string>>;
  readonly uri: string;
  /** version of the text that the ranges hold for */
  readonly version?: number;
  /** where the name is typed in the recipe; a use that it takes over from another recipe is not here */
  readonly ranges: readonly WireRange[];
}
export interface Candidate {
  readonly name: string;
  readonly title?: string;
  /** of the stock library */
  readonly stock: boolean;
  readonly changes: readonly RecipeChange[];
}
export interface RecipeChange {
  readonly recipe: string;
  /** `+120 g`, `-3.10 EUR`, `the same`, `cannot tell` */
  readonly changes: Readonly<Record<ComparedFigure, string>>;
  /** what they come to with the other material */
  readonly figures: Readonly<Record<ComparedFigure, string>>;
  /** errors and warnings that come with it, by the name of their rule */
  readonly newFindings: readonly string[];
  /** why something cannot be told */
  readonly missing?: string;
}

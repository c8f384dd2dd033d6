import type { Fraction } from './material.ts';
import type { Outline } from './recipe.ts';
import type { Amount, PlacePoint, Remarks, Unknown } from './value.ts';

export type LayerKind = 'coat' | 'ply' | 'strip' | 'patch' | 'core' | 'insert';

/** How far a piece of cloth goes. `net` (to the finished edge) is taken where nothing is said. */
export type Extent =
  | { readonly kind: 'net'; readonly typed: boolean }
  | { readonly kind: 'to trim' }
  | {
      readonly kind: 'wrap';
      readonly way: 'onto' | 'over';
      readonly target?: string;
      readonly landing?: Amount | Unknown;
    }
  | { readonly kind: 'zone'; readonly zone: string }
  | { readonly kind: 'shape'; readonly shape?: Outline; readonly centre?: PlacePoint }
  /** a strip: metres along its own length and across it */
  | { readonly kind: 'strip'; readonly length?: Amount; readonly width?: Amount; readonly centre?: PlacePoint };

export interface LayerClause {
  /** the word (or words) that the clause begins with: `wrap`, `darts`, `perforate`, `note` ... */
  readonly word: string;
  readonly path: string;
}

export interface Layer extends Remarks {
  readonly kind: LayerKind;
  readonly name: string;
  readonly path: string;
  readonly material?: string;
  /** radians counter-clockwise from x, seen from the bag side */
  readonly angle?: Amount;
  readonly extent: Extent;
  /** all clauses by the word they begin with, in order of the text */
  readonly clauses: readonly LayerClause[];

  // cloth
  readonly darts?: 'auto' | number;
  readonly oversize?: Amount | Unknown;
  readonly tabs?: readonly { readonly length: Amount; readonly end?: string }[];
  readonly turnedOver?: boolean;
  /** a quarter turn and the like, radians */
  readonly turned?: Amount;
  readonly faceDown?: boolean;
  readonly lap?: Amount;
  readonly joins?: readonly { readonly kind: 'lap' | 'butt'; readonly lap?: Amount; readonly at?: PlacePoint }[];
  readonly fraction?: Fraction;
  readonly wetResin?: string;
  readonly warpAlong?: 'x' | 'y';
  /** each copy smaller all round by this, or shorter at an end */
  readonly drop?: { readonly by: Amount; readonly end?: string };

  // coat
  readonly film?: { readonly amount: Amount; readonly wet?: boolean };
  readonly coats?: number;
  readonly applied?: 'brush' | 'roller' | 'spray';
  readonly waxed?: boolean;
  readonly dark?: boolean;

  // core and insert
  readonly thickness?: Amount | Unknown;
  readonly inset?: Amount | Unknown;
  /** water in it as it is laid, kg/kg */
  readonly moisture?: Amount;
  /** room left round an insert in its core */
  readonly clearance?: Amount;
  readonly chamfer?: Amount;
  readonly perforation?: { readonly diameter?: Amount; readonly pitch?: Amount };
  readonly grooves?: readonly {
    readonly strip?: string;
    readonly width?: Amount;
    readonly depth?: Amount;
    readonly clearance?: Amount;
    readonly path: string;
  }[];
  readonly score?: {
    readonly pitch?: Amount;
    readonly width?: Amount;
    readonly depth?: Amount;
    /** the face that is cut into */
    readonly from?: 'tool' | 'bag';
  };
  readonly pieces?: number;
  readonly bedded?: { readonly material: string; readonly amount?: Amount };
  readonly sealed?: boolean;
}

export interface Repeat extends Remarks {
  readonly kind: 'repeat';
  readonly path: string;
  readonly times?: number;
  readonly stagger?: Amount;
  readonly turn?: Amount;
  readonly drop?: { readonly by: Amount; readonly end?: string };
  readonly items: readonly StackItem[];
}

export interface Mirror extends Remarks {
  readonly kind: 'mirror';
  readonly path: string;
  readonly about?: string;
}

export type StackItem = Layer | Repeat | Mirror;

export interface Stack extends Remarks {
  readonly path: string;
  readonly from?: 'tool' | 'caul';
  readonly tool?: string;
  readonly items: readonly StackItem[];
}

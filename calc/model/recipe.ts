import type { Stack } from './layer.ts';
import type { EntryKey } from './place.ts';
import type { Process } from './process.ts';
import type { Amount, Coordinate, PlacePoint, Remarks, Unknown } from './value.ts';

/** A recipe as it stands for one size: likeness, `size` and `let` are already worked in. */
export interface Recipe extends Remarks {
  readonly entry: EntryKey;
  readonly name: string;
  readonly title?: string;
  /** name of the size; none for the recipe as written */
  readonly size?: string;
  /** names of all its sizes */
  readonly sizes: readonly string[];
  readonly like?: string;
  readonly revision?: number;
  /** how many parts the order asks for; 1 where nothing is said */
  readonly quantity: number;
  readonly handed?: readonly string[];
  readonly lets: Readonly<Record<string, Amount | Unknown>>;
  readonly part?: Part;
  readonly stack?: Stack;
  readonly process?: Process;
  readonly loads: readonly Load[];
  readonly expects: readonly Expectation[];
}

/** Outlines as typed; metres. */
export type Outline =
  | { readonly kind: 'rectangle'; readonly length: number; readonly width: number }
  | { readonly kind: 'rounded'; readonly length: number; readonly width: number; readonly corner: number }
  | { readonly kind: 'circle'; readonly diameter: number }
  | { readonly kind: 'ellipse'; readonly length: number; readonly width: number }
  | { readonly kind: 'capsule'; readonly length: number; readonly width: number }
  | { readonly kind: 'polygon'; readonly points: readonly { readonly x: number; readonly y: number }[] }
  | { readonly kind: 'path'; readonly data: string }
  | {
      readonly kind: 'file';
      /** as typed, relative to the recipe */
      readonly file: string;
      /** by which the book knows the drawing */
      readonly address?: string;
      readonly layer?: string;
      readonly id?: string;
    };

/** A shape somewhere on the part; `centre` absent means the centre of the part. */
export interface PlacedShape {
  readonly shape?: Outline;
  readonly centre?: PlacePoint;
  readonly path: string;
}

export type Edge =
  | { readonly kind: 'square' }
  | { readonly kind: 'round'; readonly radius: Amount }
  | { readonly kind: 'chamfer'; readonly angle?: Amount; readonly depth?: Amount };

export interface Zone extends PlacedShape, Remarks {
  readonly name: string;
  /** something is clamped, screwed, hinged or pressed on there */
  readonly clamped?: true;
}

export interface Part extends Remarks {
  readonly path: string;
  readonly outline?: Outline;
  readonly cutouts: readonly PlacedShape[];
  readonly edge?: Edge;
  /** x runs from `from` to `to` */
  readonly ends?: { readonly from: string; readonly to: string };
  readonly trimAllowance?: Amount | Unknown;
  readonly zones: readonly Zone[];
  /** upstand all round */
  readonly sides?: { readonly height: Amount; readonly angle?: Amount; readonly radius?: Amount };
  readonly cosmetic?: 'tool face' | 'bag face';
  readonly anglesFromToolFace?: boolean;
}

export interface Load extends Remarks {
  readonly name: string;
  readonly path: string;
  readonly supports?: Amount;
  readonly clamped?: boolean;
  readonly loads: readonly {
    readonly kind: 'force' | 'weight' | 'pressure';
    readonly amount: Amount;
    readonly over: readonly Amount[];
    readonly place?: 'middle' | PlacePoint | { readonly from: Coordinate };
    readonly path: string;
  }[];
  readonly factor?: number;
}

export type Comparison = '<=' | '>=' | '<' | '>';

/** `expect sag under rider <= 12 mm`, `expect thickness at middle 20.8 mm to 21.5 mm`, `expect fill <= 60 % of gel` */
export interface Test {
  readonly what: string;
  readonly under?: string;
  readonly at?: 'middle' | PlacePoint | string;
  readonly on?: string;
  readonly of?: string;
  readonly basis?: string;
  readonly comparison?: Comparison;
  readonly limit?: Amount | Unknown;
  readonly low?: Amount;
  readonly high?: Amount;
}

export interface Expectation extends Remarks {
  readonly path: string;
  readonly test: Test;
}

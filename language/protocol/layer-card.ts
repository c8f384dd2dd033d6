import type { WirePlace, WirePosition, WireReason } from './place.ts';

/** One laid layer: its recipe, the size of it, and the key of the layer in the stack. */
export interface LayerName {
  readonly recipe: string;
  readonly size?: string;
  readonly key: string;
}

/** Request `laybook/layerCard`: the layer at a position, or one that was shown before. */
export const layerCardRequest = 'laybook/layerCard';
export interface LayerCardParams {
  readonly uri: string;
  readonly position?: WirePosition;
  readonly layer?: LayerName;
}

export interface LayerCardResult {
  /** none where there is no layer */
  readonly card?: LayerCard;
  /** why there is no card, in a sentence */
  readonly nothing?: string;
  /** the recipe at the position has layers: its first */
  readonly first?: LayerName;
  /** the text cannot be read just now: what is told may lack a line */
  readonly broken?: { readonly words: string; readonly line: number };
}

/** Everything that is shown of a layer, in words of the reader's language and units. */
export interface LayerCard {
  readonly uri: string;
  readonly layer: LayerName;
  /** `outer` */
  readonly title: string;
  /** `ply of triax_680 at 0 deg, layer 1 of 6` */
  readonly kind: string;
  /** `sled_deck, size short` */
  readonly recipe: string;
  /** what somebody hears who does not see the card */
  readonly summary: string;
  readonly place?: WirePlace;
  readonly stack: StackPicture;
  readonly piece?: PiecePicture;
  readonly figures: readonly CardFigure[];
  /** what cannot be told, and why */
  readonly missing: readonly WireReason[];
  readonly touches: readonly Touch[];
}

export interface CardFigure {
  /** name of machine output */
  readonly name: string;
  readonly label: string;
  /** none where it cannot be told */
  readonly value?: string;
  readonly reasons: readonly WireReason[];
}

/** The stack from the tool face to the bag face. */
export interface StackPicture {
  readonly layers: readonly StackBand[];
  /** `22.4 mm`; none where a layer's thickness is not known */
  readonly total?: string;
  /** layers of it that are not in `layers`, because there are too many: below and above */
  readonly below: number;
  readonly above: number;
}

export interface StackBand {
  readonly key: string;
  readonly name: string;
  readonly kind: 'coat' | 'ply' | 'strip' | 'patch' | 'core' | 'insert';
  /** `core of foam_80, 20 mm` */
  readonly words: string;
  /** m; none where it cannot be told */
  readonly thickness?: number;
  /** degrees of the fibres from x, counter-clockwise; none for mats and what has no fibres */
  readonly directions: readonly number[];
  /** it covers the whole part; a patch and a strip do not */
  readonly whole: boolean;
  /** key of the core that it lies in, as an insert or in a groove: it adds nothing to the height */
  readonly inside?: string;
  readonly shown: boolean;
}

/** The piece as it is cut, over the part that it is for; m. */
export interface PiecePicture {
  readonly length: number;
  readonly width: number;
  readonly part?: { readonly length: number; readonly width: number };
  readonly lanes: number;
  /** `1262 mm by 502 mm` */
  readonly words: string;
  readonly reach?: string;
  readonly reasons: readonly WireReason[];
}

/** A layer that lies directly below or above, or that is spoken of in the line. */
export interface Touch {
  readonly side: 'below' | 'above' | 'around';
  readonly layer?: LayerName;
  /** `inner` */
  readonly name: string;
  /** `ply of triax_680`, `the tool` */
  readonly words: string;
  readonly place?: WirePlace;
}

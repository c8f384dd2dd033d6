import type { Layer } from '../model/layer.ts';

/** How a mirrored piece has to be laid so that it is the image of the one it mirrors. */
export interface MirrorTurn {
  /** name of the laid layer that it mirrors */
  readonly of: string;
  /** rad, added to the angle of the piece that it mirrors; a stitched +-45 takes a quarter turn */
  readonly turn: number;
  /** the piece is turned over as against the one it mirrors */
  readonly over: boolean;
  /**
   * The cloth has no mirror image by any turning: fibre directions (rad, from the tool side) that the mirror image has,
   * and those that the piece gets. What differs twists the part.
   */
  readonly orphan?: { readonly wanted: readonly number[]; readonly got: readonly number[] };
}

/** How much smaller a copy is than the line says. */
export interface LaidDrop {
  /** m, smaller all round */
  readonly around: number;
  /** m, shorter at a named end */
  readonly ends: Readonly<Record<string, number>>;
}

/** One layer as it lies in the mould, after repeats and mirrors are worked out. */
export interface LaidLayer {
  /** the name that it is spoken of by: `outer`, `mat.2`, `a.m` */
  readonly name: string;
  /** the name, made unique where two lines have the same one; figures of a layer are asked by it */
  readonly key: string;
  /** position from the tool face, from 0 */
  readonly index: number;
  /** the line that it comes from */
  readonly layer: Layer;
  /** path of that line in the recipe */
  readonly path: string;
  /** rad, counter-clockwise from x seen from the bag side, turns of repeats and mirrors worked in; none for cloth without direction */
  readonly angle?: number;
  /** upper side of the roll to the tool */
  readonly turnedOver: boolean;
  /** m along the part by which a copy's joins are moved */
  readonly stagger: number;
  readonly drop: LaidDrop;
  readonly mirrored?: MirrorTurn;
}

export interface StackProblem {
  readonly kind:
    | 'too-many-layers'
    | 'bad-repeat'
    | 'mirror-of-nothing'
    | 'about-unknown'
    | 'layers-after-about'
    | 'patch-not-mirrored';
  /** path of the line */
  readonly path: string;
  /** the layer spoken of */
  readonly name?: string;
  /** how many layers the stack would have; how many times are asked */
  readonly count?: number;
}

/** A stack as it is laid, from the tool face outwards. `layers` is empty when there would be too many. */
export interface LaidStack {
  readonly layers: readonly LaidLayer[];
  readonly problems: readonly StackProblem[];
}

export const NO_DROP: LaidDrop = { around: 0, ends: {} };

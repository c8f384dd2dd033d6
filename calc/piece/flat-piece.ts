import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';

export type PieceKind = 'cloth' | 'core' | 'insert' | 'peel' | 'mesh' | 'film' | 'breather' | 'bag' | 'other';

/**
 * A cut from the free edge towards the face; metres. A dart is a V that is taken out and closes edge to edge. A slit is a
 * single cut: on a bend outwards its edges lie over each other by `lap`, on a bend inwards it opens by `opens`.
 */
export interface Dart {
  readonly kind: 'dart' | 'slit';
  /** the middle of its mouth on the free edge */
  readonly mouth: Point;
  /** its inner end */
  readonly tip: Point;
  /** of the mouth; 0 for a slit */
  readonly width: number;
  readonly depth: number;
  readonly lap?: number;
  readonly opens?: number;
  /** of a sharp corner: it has no other place */
  readonly corner?: true;
}

/**
 * A pen line on a piece, or a short cut (`notch`). `fold` is the line where a wrapped ply leaves the face, `edge` the
 * finished edge of cloth that runs past it, `chamfer` the upper end of a sloped edge, `pocket` what is taken out of a core
 * for an insert but not through it, `cutout` what is cut out of the part later.
 */
export interface Mark {
  readonly kind:
    | 'notch'
    | 'fold'
    | 'edge'
    | 'centre line'
    | 'groove'
    | 'insert'
    | 'pocket'
    | 'score'
    | 'chamfer'
    | 'cutout'
    | 'join';
  readonly line: Contour;
  readonly closed: boolean;
  readonly name?: string;
}

/** Darts for folds, or slits that open where the cloth bridges: how many at most, and how wide, m. */
export interface CutsLaid {
  readonly kind: Dart['kind'];
  readonly count: number;
  readonly width: number;
}

/** A flat piece as it is cut, in the frame of the part (m, y to the left of x, seen from the bag side). */
export interface FlatPiece {
  /** unique within the recipe: `outer`, `outer 2/3` for a lane of a joined piece, `mat.2`, `peel` */
  readonly name: string;
  /** the layer or step it comes from: its name or verb, and its path in the recipe's model */
  readonly of: string;
  readonly path: string;
  readonly kind: PieceKind;
  readonly material?: string;
  /** how many alike of them one part needs */
  readonly count: number;
  /** counter-clockwise, darts cut in */
  readonly cut: Contour;
  readonly holes: readonly Contour[];
  readonly darts: readonly Dart[];
  readonly marks: readonly Mark[];
  readonly drills: readonly { readonly at: Point; readonly diameter: number }[];
  /** the way of the roll (warp), rad from x of the part; absent where the material has no direction */
  readonly grain?: number;
  /**
   * Whether the face that lies up on the cutting table is the one that lies up in the mould. Where it is not, the piece is
   * laid out mirrored: it is drawn as it lies in the mould, with the upper side of the roll to the tool.
   */
  readonly faceUp: boolean;
  /** whether the material allows the piece to turn by 180 degrees on the roll */
  readonly mayTurn: boolean;
  /** whether it may also be cut with the other face up, mirrored: only where turning the cloth over changes none of its layers */
  readonly mayMirror?: boolean;
  /** the hand of a handed part: its pieces are mirrored, angles too, and stand apart */
  readonly hand?: string;
  /** m2, inside `cut` less the holes */
  readonly area: number;
  /** m2 that darts take out of it; area and this together are the developed area */
  readonly darted?: number;
  /** m, of the upright box round it */
  readonly length: number;
  readonly width: number;
  /** a lane of a piece that is wider than its roll: which of how many, and the overlap with the next, m */
  readonly lane?: { readonly number: number; readonly of: number; readonly lap: number };
  /**
   * On a face that is curved both ways: the cuts that are made as the piece is laid. They have no place on the flat piece, because
   * where it folds or bridges hangs on where it is first pressed down, and from there on how it is drawn.
   */
  readonly cutsLaid?: CutsLaid;
}

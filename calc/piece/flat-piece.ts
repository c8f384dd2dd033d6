import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';

export type PieceKind = 'cloth' | 'core' | 'insert' | 'peel' | 'mesh' | 'film' | 'breather' | 'bag' | 'other';

/** A dart that is cut out of a piece, or a relief slit: from the free edge towards the face; metres. */
export interface Dart {
  readonly kind: 'dart' | 'slit';
  /** the middle of its mouth on the free edge */
  readonly mouth: Point;
  /** its inner end */
  readonly tip: Point;
  /** of the mouth; 0 for a slit */
  readonly width: number;
  readonly depth: number;
}

/** A cut or a pen line on a piece. */
export interface Mark {
  readonly kind: 'notch' | 'fold' | 'centre line' | 'groove' | 'insert' | 'pocket' | 'score';
  readonly line: Contour;
  readonly closed: boolean;
  readonly name?: string;
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
  /** whether the face that lies up on the cutting table is the one that lies up in the mould */
  readonly faceUp: boolean;
  /** whether the material allows the piece to turn by 180 degrees on the roll */
  readonly mayTurn: boolean;
  /** m2, inside `cut` less the holes */
  readonly area: number;
  /** m, of the upright box round it */
  readonly length: number;
  readonly width: number;
  /** a lane of a piece that is wider than its roll: which of how many, and the overlap with the next, m */
  readonly lane?: { readonly number: number; readonly of: number; readonly lap: number };
}

import type { Text } from '../figure/figure.ts';
import type { Vertex } from '../outline/contour.ts';

/** A place in the text of a drawing; line and column count from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column?: number;
}

/** A curve as drawn, in straights and arcs; metres, y upwards as the drawing is seen. */
export interface DrawnCurve {
  /** the nearest layer or named group that it lies in */
  readonly layer?: string;
  /** every layer and group round it, inside out, by name and by id */
  readonly groups: readonly string[];
  readonly id?: string;
  /** of an open curve the last vertex is its end; a closed one leads from its last vertex back to its first */
  readonly line: readonly Vertex[];
  readonly closed: boolean;
  /** on a layer that is switched off or frozen: taken only where that layer is named */
  readonly hidden?: true;
  readonly at?: TextPlace;
}

/** What is wrong with a drawing, or what of it was left out, for the reader of the recipe. */
export interface DrawingProblem {
  /** `refused`: nothing of it is used; `broken`: what is in it may not be all; `left out`: the rest is sound */
  readonly kind: 'refused' | 'broken' | 'left out';
  readonly message: Text;
  readonly at?: TextPlace;
}

/** What one unit of a drawing is. */
export interface DrawingUnit {
  /** as told to the reader: mm, inch, px */
  readonly name: string;
  /** m */
  readonly metres: number;
  /** why that is a guess; absent where the file says it */
  readonly unclear?: 'not said' | 'pixels' | 'says inches elsewhere' | 'says millimetres elsewhere';
}

export interface ReadDrawing {
  readonly curves: readonly DrawnCurve[];
  /** names that a `layer` may be picked by, in the order of the file */
  readonly layers: readonly string[];
  readonly unit: DrawingUnit;
  /** its own y runs downwards, as on a screen: places are told as the drawing has them */
  readonly down?: true;
  /** the widest gap between ends that were joined, m; 0 where none were apart */
  readonly joinedOver: number;
  readonly problems: readonly DrawingProblem[];
}

/** What lies behind the name of a file: its drawing, or why there is none. The same object for the same content. */
export type DrawnFile = { readonly drawing: ReadDrawing } | { readonly missing: Text };

export const nothingDrawn = (...problems: readonly DrawingProblem[]): ReadDrawing => ({
  curves: [],
  layers: [],
  unit: { name: 'mm', metres: 1e-3 },
  joinedOver: 0,
  problems,
});

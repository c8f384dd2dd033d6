import type { Shown, Text } from '../figure/figure.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';

/**
 * What a line of a drawing is for. `cut`, `mark`, `drill` and `text` go to a cutter; the others are for the eye and
 * are switched on and off in the plan.
 */
export type DrawingLayer =
  | 'cut'
  | 'mark'
  | 'drill'
  | 'text'
  | 'outline'
  | 'coat'
  | 'cloth'
  | 'core'
  | 'insert'
  | 'perforation'
  | 'process'
  | 'zone'
  | 'tool'
  | 'flow'
  | 'dimension';

/** What stands behind a shape: the line of the recipe that it was drawn from. */
export interface Source {
  /** path in the recipe's model: `stack.2`, `process.5`, `part.outline` */
  readonly path: string;
  /** the layer, piece, zone, feed ... by its name */
  readonly name?: string;
}

interface Item {
  readonly layer: DrawingLayer;
  readonly source?: Source;
}

/** A line of straights and arcs; metres, y upwards. */
export interface DrawnLine extends Item {
  readonly kind: 'line';
  readonly points: Contour;
  readonly closed: boolean;
  /** dashed lines are hidden edges and fold lines */
  readonly dashed?: boolean;
  /** ply angle that a hatch shows besides a colour, rad; absent for no hatch */
  readonly hatch?: number;
}

export interface DrawnCircle extends Item {
  readonly kind: 'circle';
  readonly centre: Point;
  /** m */
  readonly radius: number;
}

export interface DrawnText extends Item {
  readonly kind: 'text';
  readonly at: Point;
  /** of capitals, m */
  readonly height: number;
  readonly text: string;
  /** rad, counter-clockwise */
  readonly angle?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** An arrow: the grain of cloth, a dimension (both ends), the way that resin flows. */
export interface DrawnArrow extends Item {
  readonly kind: 'arrow';
  readonly from: Point;
  readonly to: Point;
  readonly heads: 'end' | 'both';
}

export type DrawnItem = DrawnLine | DrawnCircle | DrawnText | DrawnArrow;

/** A neutral drawing, 1:1 in metres, from which SVG, DXF, PDF and the plan on the screen are made. */
export interface Drawing {
  readonly title: string;
  /** every drawing says from where it is seen */
  readonly seenFrom: 'bag side' | 'tool side' | 'edge';
  /** the box round everything, m */
  readonly low: Point;
  readonly high: Point;
  readonly items: readonly DrawnItem[];
  /** the thinnest of what is drawn one on the other, m: lines as wide as that would make one black of it */
  readonly thinnest?: number;
  /** one row a thing, for who reads instead of looking */
  readonly table?: { readonly head: readonly (Text | string)[]; readonly rows: readonly (readonly (Shown | Text)[])[] };
}

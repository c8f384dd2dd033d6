import type { Point } from './shape.ts';

/**
 * A point of a line of straights and arcs, and the way on to the next point. `bulge` is tan(sweep / 4) of the arc that
 * begins here, positive where it turns to the left; absent or 0 for a straight. (The same figure is used by the
 * AutoCAD DXF reference, group code 42, so that arcs reach a cutter as arcs.)
 */
export interface Vertex extends Point {
  readonly bulge?: number;
}

/** A closed line of true straights and arcs, metres; an outline runs counter-clockwise, a hole clockwise. The last point leads back to the first. */
export type Contour = readonly Vertex[];

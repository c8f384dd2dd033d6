import { isImpossible } from '../../outcome.ts';
import type { Contour } from '../../outline/contour.ts';
import type { Placed } from '../../outline/shape.ts';
import { type Grown, grownContours } from '../../piece/footprint-contour.ts';
import type { Footprint } from '../../stack/footprint.figure.ts';

/*
 * A drawing shows what it can: a shape without sense is left out of it, and what is wrong with it is told beside the line.
 */

/** A shape where it lies on the part. */
export const placedContour = (placed: Placed): Contour | undefined => offsetContours(placed, 0)[0];

/** The lines `by` (m) outside a shape where it lies on the part, inside it where negative. */
export const offsetContours = (placed: Placed, by: number): readonly Contour[] => grown({ placed, out: by });

/** Where a layer lies: its footprint, run out by `past` (m), and cut off where it is shorter at an end. */
export const footprintContours = ({ placed, inset, shorter }: Footprint, past: number): readonly Contour[] =>
  grown({ placed, out: past - inset, shorter });

function grown(asked: Grown): readonly Contour[] {
  const flats = grownContours(asked);
  return isImpossible(flats) ? [] : flats.flatMap(({ outer, holes }) => [outer, ...holes]);
}

import type { Contour } from '../outline/contour.ts';
import { contourArea, contourBox } from '../outline/contour-measure.ts';
import type { FlatPiece } from './flat-piece.ts';

/** Area and size of a piece; holes run clockwise and count against it. */
export function measures(cut: Contour, holes: readonly Contour[]): Pick<FlatPiece, 'area' | 'length' | 'width'> {
  const [low, high] = contourBox(cut);
  return {
    area: holes.reduce((sum, hole) => sum + contourArea(hole), contourArea(cut)),
    length: high.x - low.x,
    width: high.y - low.y,
  };
}

import { keptWith } from '../kept.ts';
import type { Contour } from '../outline/contour.ts';
import { contourArea, contourBox } from '../outline/contour-measure.ts';
import type { FlatPiece } from './flat-piece.ts';

/** Area and size of a piece; holes run clockwise and count against it. */
export function measures(cut: Contour, holes: readonly Contour[]): Measures {
  const own = kept(cut, '', () => {
    const [low, high] = contourBox(cut);
    return { area: contourArea(cut), length: high.x - low.x, width: high.y - low.y };
  });
  return holes.length === 0 ? own : { ...own, area: holes.reduce((sum, hole) => sum + contourArea(hole), own.area) };
}

type Measures = Pick<FlatPiece, 'area' | 'length' | 'width'>;

const kept = keptWith<Contour, Measures>();

import { onceFor } from '../kept.ts';
import { isImpossible } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { contourDistance } from '../outline/contour-distance.ts';
import { contourBox } from '../outline/contour-measure.ts';
import { offsetContour } from '../outline/contour-offset.ts';

/** Radius of the largest disc that fits into an outline, m: to 1e-5 of its width. Drawn in by more, nothing is left of it. */
export const widestDisc = onceFor((contour: Contour): number => {
  const [low, high] = contourBox(contour);
  let [fits, most] = [0, Math.min(high.x - low.x, high.y - low.y) / 2];
  if (isLeft(contour, most * (1 - 1e-6))) fits = most;
  for (let i = 0; i < 17 && fits < most; i++) {
    const middle = (fits + most) / 2;
    if (isLeft(contour, middle)) fits = middle;
    else most = middle;
  }
  return fits;
});

/** Whether a disc of this radius (m) fits, as most do: about the middle of the box, else where the outline drawn in has something left. */
export function discFits(contour: Contour, radius: number): boolean {
  const [low, high] = contourBox(contour);
  const middle = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 };
  return contourDistance(contour, middle) < -radius || isLeft(contour, radius);
}

function isLeft(contour: Contour, by: number): boolean {
  const inner = offsetContour(contour, -by);
  return !isImpossible(inner) && inner.length > 0;
}

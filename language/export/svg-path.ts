import { ways } from '../../calc/drawing/ways.ts';
import type { Contour } from '../../calc/outline/contour.ts';
import type { Point } from '../../calc/outline/shape.ts';
import { written } from './numbers.ts';

/** From a drawing (m, y upwards) to paper or screen (y downwards): the same scale along and across. */
export interface Frame {
  /** the point of the drawing that comes to lie at the paper's origin, m */
  readonly corner: Point;
  /** units of the paper to a metre */
  readonly scale: number;
}

export const onPaper = ({ corner, scale }: Frame, { x, y }: Point): Point => ({
  x: (x - corner.x) * scale,
  y: (corner.y - y) * scale,
});

/**
 * Path data (SVG 1.1, chapter 8.3) of a line, arcs as arcs. Turning y over leaves a left turn a left turn to the eye,
 * which SVG's downward y calls a negative sweep.
 */
export function pathData(points: Contour, closed: boolean, frame: Frame, decimals?: number): string {
  const pair = ({ x, y }: Point): string => `${written(x, decimals)} ${written(y, decimals)}`;
  const [first] = points;
  if (first === undefined) return '';
  const all = ways(points, closed);
  const steps = all.map(({ to, arc }, i) => {
    const end = pair(onPaper(frame, to));
    if (arc !== undefined && arc.radius > 0) {
      const radius = written(arc.radius * frame.scale, decimals);
      return `A${radius} ${radius} 0 ${Math.abs(arc.sweep) > Math.PI ? 1 : 0} ${arc.sweep < 0 ? 1 : 0} ${end}`;
    }
    // The straight that closes a line need not be written: Z draws it.
    return closed && i === all.length - 1 ? '' : `L${end}`;
  });
  return `M${pair(onPaper(frame, first))}${steps.join('')}${closed ? 'Z' : ''}`;
}

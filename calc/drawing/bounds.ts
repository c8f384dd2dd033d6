import { onceFor } from '../kept.ts';
import type { Contour } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import type { Point } from '../outline/shape.ts';
import { arrowStrokes } from './arrow.ts';
import type { DrawnItem, DrawnText } from './drawing.ts';
import { outermost } from './ways.ts';

export interface Box {
  readonly low: Point;
  readonly high: Point;
}

/** Capitals and digits of common sans serif letters are at most so wide, in heights of a capital, on the average of a word. */
export const letterWidth = 0.95;

/** The box round some points; one of no size at the origin where there are none. */
export function boxOf(points: Iterable<Point>): Box {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return left > right
    ? { low: { x: 0, y: 0 }, high: { x: 0, y: 0 } }
    : { low: { x: left, y: low }, high: { x: right, y: high } };
}

/** The points that a box round the item must hold; of a text about, as letters differ. */
export function outermostOf(item: DrawnItem): readonly Point[] {
  switch (item.kind) {
    case 'line':
      return outermost(item.points, item.closed);
    case 'circle': {
      const { centre, radius } = item;
      return [
        { x: centre.x - radius, y: centre.y - radius },
        { x: centre.x + radius, y: centre.y + radius },
      ];
    }
    case 'text':
      return textCorners(item);
    case 'arrow':
      return arrowStrokes(item).flat();
  }
}

function textCorners({ at, height, text, angle = 0, anchor = 'start' }: DrawnText): readonly Point[] {
  const width = [...text].length * height * letterWidth;
  const left = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  return [
    [left, -0.3 * height],
    [left + width, -0.3 * height],
    [left, 1.1 * height],
    [left + width, 1.1 * height],
  ].map(([x = 0, y = 0]) => ({
    x: at.x + x * Math.cos(angle) - y * Math.sin(angle),
    y: at.y + x * Math.sin(angle) + y * Math.cos(angle),
  }));
}

/** The box round a closed line, m; kept with the line, which drawings share. */
export const boxRoundLine = onceFor((contour: Contour): Box => {
  const [low, high] = contourBox(contour);
  return { low, high };
});

/** The box round items of a drawing, m. */
export const boundsOf = (items: readonly DrawnItem[]): Box =>
  boxOf(
    items.flatMap((item) => {
      if (item.kind !== 'line' || !item.closed) return outermostOf(item);
      const { low, high } = boxRoundLine(item.points);
      return [low, high];
    }),
  );

import { boxOf } from '../../../calc/drawing/bounds.ts';
import type { DrawnLine } from '../../../calc/drawing/drawing.ts';
import { movedPoint } from '../../../calc/drawing/move.ts';
import { outermost } from '../../../calc/drawing/ways.ts';
import type { Point } from '../../../calc/outline/shape.ts';

/** More strokes than this tell the eye nothing. */
const most = 500;

/** Straight strokes at an angle (rad), `pitch` (m) apart, that cover the box round a line. */
export function hatchLines(line: DrawnLine, angle: number, pitch: number): readonly (readonly [Point, Point])[] {
  const turned = outermost(line.points, true).map((point) => movedPoint({ turn: -angle }, point));
  const { low, high } = boxOf(turned);
  const step = Math.max(pitch, (high.y - low.y) / most);
  const count = Math.floor((high.y - low.y) / step);
  return Array.from({ length: count }, (_, i) => {
    const y = low.y + (i + 0.5) * step;
    return [movedPoint({ turn: angle }, { x: low.x, y }), movedPoint({ turn: angle }, { x: high.x, y })] as const;
  });
}

import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';
import type { DrawnItem } from './drawing.ts';

/** A move of the plane: mirrored first (y to -y), then turned (rad), made larger, and shifted. */
export interface Move {
  readonly mirrored?: boolean;
  readonly turn?: number;
  readonly scale?: number;
  /** m */
  readonly by?: Point;
}

export function movedPoint({ mirrored = false, turn = 0, scale = 1, by = { x: 0, y: 0 } }: Move, point: Point): Point {
  const y = mirrored ? -point.y : point.y;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: scale * (point.x * cos - y * sin) + by.x, y: scale * (point.x * sin + y * cos) + by.y };
}

/** The line after the move. A mirrored one runs the other way round, so that its inside stays on its left. */
export function movedLine(move: Move, points: Contour, closed: boolean): Contour {
  const moved = points.map((vertex) => ({ ...movedPoint(move, vertex), bulge: vertex.bulge ?? 0 }));
  if (!move.mirrored) return moved.map(({ x, y, bulge }) => (bulge === 0 ? { x, y } : { x, y, bulge }));
  // The arc that began at a vertex now ends there; mirrored and run backwards, it turns the same way.
  return moved
    .map((_, i) => {
      const at = moved[moved.length - 1 - i];
      const before = moved[moved.length - 2 - i] ?? (closed ? moved.at(-1) : undefined);
      return { x: at?.x ?? 0, y: at?.y ?? 0, bulge: before?.bulge ?? 0 };
    })
    .map(({ x, y, bulge }) => (bulge === 0 ? { x, y } : { x, y, bulge }));
}

/** A direction after the move, rad. */
export const movedAngle = ({ mirrored = false, turn = 0 }: Move, angle: number): number =>
  (mirrored ? -angle : angle) + turn;

/** An item of a drawing after the move; text is never mirrored. */
export function movedItem(move: Move, item: DrawnItem): DrawnItem {
  const scale = move.scale ?? 1;
  switch (item.kind) {
    case 'line': {
      const { hatch, ...rest } = item;
      return {
        ...rest,
        points: movedLine(move, item.points, item.closed),
        ...(hatch === undefined ? {} : { hatch: movedAngle(move, hatch) }),
      };
    }
    case 'circle':
      return { ...item, centre: movedPoint(move, item.centre), radius: item.radius * scale };
    case 'text':
      return {
        ...item,
        at: movedPoint(move, item.at),
        height: item.height * scale,
        angle: movedAngle(move, item.angle ?? 0),
      };
    case 'arrow':
      return { ...item, from: movedPoint(move, item.from), to: movedPoint(move, item.to) };
  }
}

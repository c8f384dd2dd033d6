import type { Contour } from './contour.ts';

/** A point of the part's plane, metres. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The outline of a part, zone, cutout, patch or insert; metres. All but `polygon`, `contour`, `path` and `file` lie
 * about their own centre, `length` along x and `width` along y. `contour` is what drawings are read into.
 */
export type Shape =
  | { readonly kind: 'rectangle'; readonly length: number; readonly width: number }
  | { readonly kind: 'rounded'; readonly length: number; readonly width: number; readonly corner: number }
  | { readonly kind: 'circle'; readonly diameter: number }
  | { readonly kind: 'ellipse'; readonly length: number; readonly width: number }
  | { readonly kind: 'capsule'; readonly length: number; readonly width: number }
  | { readonly kind: 'polygon'; readonly points: readonly Point[] }
  | { readonly kind: 'contour'; readonly vertices: Contour }
  | { readonly kind: 'path'; readonly data: string }
  | {
      readonly kind: 'file';
      readonly file: string;
      readonly address?: string;
      readonly layer?: string;
      readonly id?: string;
    };

/**
 * A shape somewhere on the part: turned counter-clockwise by `angle` (rad) about its own origin, then moved to
 * `centre`.
 */
export interface Placed {
  readonly shape: Shape;
  readonly centre: Point;
  readonly angle?: number;
}

export const origin: Point = { x: 0, y: 0 };

/** From the part's frame into that of a placed shape. */
export function intoFrame(placed: Placed, { x, y }: Point): Point {
  const dx = x - placed.centre.x;
  const dy = y - placed.centre.y;
  const cos = Math.cos(placed.angle ?? 0);
  const sin = Math.sin(placed.angle ?? 0);
  return { x: dx * cos + dy * sin, y: dy * cos - dx * sin };
}

/** From the frame of a placed shape to that of the part. */
export function outOfFrame(placed: Placed, { x, y }: Point): Point {
  const cos = Math.cos(placed.angle ?? 0);
  const sin = Math.sin(placed.angle ?? 0);
  return { x: placed.centre.x + x * cos - y * sin, y: placed.centre.y + x * sin + y * cos };
}

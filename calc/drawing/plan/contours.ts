import { isImpossible } from '../../outcome.ts';
import type { Contour } from '../../outline/contour.ts';
import { contourOf } from '../../outline/contour-of.ts';
import { offsetContour } from '../../outline/contour-offset.ts';
import type { Placed } from '../../outline/shape.ts';
import { after, moved, transformed, turned } from '../../outline/transform.ts';
import { clippedByAll } from '../../piece/half-plane.ts';
import type { Footprint } from '../../stack/footprint.figure.ts';

/*
 * A drawing shows what it can: a shape without sense is left out of it, and what is wrong with it is told beside the line.
 * Lines are kept with the shapes they are of, which are the same objects as long as the figures behind them hold.
 */
const kept = new WeakMap<Placed, Map<number, readonly Contour[]>>();

/** A shape where it lies on the part. */
export const placedContour = (placed: Placed): Contour | undefined => offsetContours(placed, 0)[0];

/** The lines `by` (m) outside a shape where it lies on the part, inside it where negative. */
export function offsetContours(placed: Placed, by: number): readonly Contour[] {
  const byOffset = kept.get(placed) ?? new Map<number, readonly Contour[]>();
  kept.set(placed, byOffset);
  const known = byOffset.get(by);
  if (known !== undefined) return known;
  const found = foundContours(placed, by);
  byOffset.set(by, found);
  return found;
}

function foundContours({ shape, centre, angle = 0 }: Placed, by: number): readonly Contour[] {
  const contour = contourOf(shape);
  if (isImpossible(contour)) return [];
  const lines = offsetContour(contour, by);
  if (isImpossible(lines)) return [];
  if (centre.x === 0 && centre.y === 0 && angle === 0) return lines;
  const where = after(moved(centre.x, centre.y), turned(angle));
  return lines.map((line) => transformed(line, where));
}

/** Where a layer lies: its footprint, run out by `past` (m), and cut off where it is shorter at an end. */
export function footprintContours({ placed, inset, shorter }: Footprint, past: number): readonly Contour[] {
  const lines = offsetContours(placed, past - inset);
  if (shorter[0] === 0 && shorter[1] === 0) return lines;
  const xs = (placedContour(placed) ?? []).map(({ x }) => x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  const kept = [
    { normal: { x: 1, y: 0 }, from: low + shorter[0] },
    { normal: { x: -1, y: 0 }, from: -(high - shorter[1]) },
  ];
  return lines.flatMap((line) => clippedByAll(line, kept));
}

import type { Point } from '../outline/shape.ts';
import type { DrawnArrow } from './drawing.ts';

/** A head is as long as this share of the arrow, but no longer than `longestHead` (m) at 1:1. */
const share = 0.25;
const longestHead = 0.012;
/** half the opening of a head, rad */
const opening = (20 * Math.PI) / 180;

/** The strokes of an arrow: its shaft, and a bent line for each head. `longest` (m) bounds a head. */
export function arrowStrokes({ from, to, heads }: DrawnArrow, longest = longestHead): readonly (readonly Point[])[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [];
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const head = Math.min(longest, share * length);
  const barb = (tip: Point, way: number, turn: number): Point => ({
    x: tip.x - head * Math.cos(way + turn),
    y: tip.y - head * Math.sin(way + turn),
  });
  const headAt = (tip: Point, way: number): readonly Point[] => [
    barb(tip, way, opening),
    tip,
    barb(tip, way, -opening),
  ];
  return [[from, to], headAt(to, angle), ...(heads === 'both' ? [headAt(from, angle + Math.PI)] : [])];
}

import fc from 'fast-check';
import type { Contour } from '../../../calc/outline/contour.ts';
import type { Point, Shape } from '../../../calc/outline/shape.ts';

const size = fc.double({ min: 0.02, max: 5, noNaN: true });
const part = fc.double({ min: 0, max: 1, noNaN: true });

/** Convex polygons with their corners on an ellipse, in order. */
export const convexPolygon: fc.Arbitrary<Shape> = fc
  .tuple(size, size, fc.uniqueArray(fc.integer({ min: 0, max: 71 }), { minLength: 3, maxLength: 12 }))
  .filter(([, , steps]) => widestGap(steps) < 36)
  .map(([a, b, steps]) => ({
    kind: 'polygon',
    points: steps
      .sort((p, q) => p - q)
      .map((k): Point => ({ x: a * Math.cos((k * Math.PI) / 36), y: b * Math.sin((k * Math.PI) / 36) })),
  }));

/** Every kind of outline that is computed and has no inside corner. */
export const convexShape: fc.Arbitrary<Shape> = fc.oneof(
  fc.tuple(size, size).map(([length, width]): Shape => ({ kind: 'rectangle', length, width })),
  fc.tuple(size, size, part).map(([length, width, share]): Shape => {
    return { kind: 'rounded', length, width, corner: (share * Math.min(length, width)) / 2 };
  }),
  size.map((diameter): Shape => ({ kind: 'circle', diameter })),
  fc.tuple(size, size).map(([length, width]): Shape => ({ kind: 'ellipse', length, width })),
  fc.tuple(size, size).map(([length, width]): Shape => ({ kind: 'capsule', length, width })),
  convexPolygon,
);

/** Outlines with inside corners: stars about the origin. */
export const star: fc.Arbitrary<Shape> = fc
  .array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 4, maxLength: 14 })
  .map((radii) => ({
    kind: 'polygon',
    points: radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
    }),
  }));

function widestGap(steps: readonly number[]): number {
  const sorted = [...steps].sort((p, q) => p - q);
  return Math.max(...sorted.map((k, i) => (sorted[i + 1] ?? (sorted[0] ?? 0) + 72) - k));
}

export const square = (side: number): Shape => ({ kind: 'rectangle', length: side, width: side });

export const polygon = (...points: readonly (readonly [number, number])[]): Shape & { kind: 'polygon' } => ({
  kind: 'polygon',
  points: points.map(([x, y]) => ({ x, y })),
});

/** An L of 1 m by 1 m with limbs of 0.4 m. */
export const ell = polygon([0, 0], [1, 0], [1, 0.4], [0.4, 0.4], [0.4, 1], [0, 1]);

/** Lines of straights and arcs with inside corners and bays, about the origin; some cross themselves. */
export const bulged: fc.Arbitrary<Contour> = fc
  .array(fc.tuple(fc.double({ min: 0.3, max: 1, noNaN: true }), fc.double({ min: -0.5, max: 0.7, noNaN: true })), {
    minLength: 3,
    maxLength: 11,
  })
  .map((corners) =>
    corners.map(([r, bulge], i) => {
      const angle = (2 * Math.PI * i) / corners.length;
      return { x: r * Math.cos(angle), y: r * Math.sin(angle), bulge: Math.abs(bulge) < 0.1 ? 0 : bulge };
    }),
  );

import { arcBetween } from './arc.ts';
import type { Contour, Vertex } from './contour.ts';
import { reversed } from './contour-measure.ts';
import { arcsAlong, ellipseCurve } from './curve.ts';
import type { Point } from './shape.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the order of the six numbers is that of SVG 1.1, section 7.4. */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const identity: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
export const moved = (x: number, y: number): Matrix => ({ ...identity, e: x, f: y });
export const scaled = (x: number, y = x): Matrix => ({ ...identity, a: x, d: y });
/** Mirrored about the x axis. */
export const mirroredAboutX: Matrix = scaled(1, -1);

/** Counter-clockwise by `angle` (rad) about the origin. */
export function turned(angle: number): Matrix {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}

/** First `inner`, then `outer`. */
export function after(outer: Matrix, inner: Matrix): Matrix {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

export const apply = ({ a, b, c, d, e, f }: Matrix, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** The same direction after a transformation, without its shift. */
export const applyTo = (m: Matrix, v: Point): Point => apply({ ...m, e: 0, f: 0 }, v);

export const determinant = ({ a, b, c, d }: Matrix): number => a * d - b * c;

/** Whether circles stay circles: turned, mirrored, moved, made larger or smaller, but not stretched. */
export function keepsCircles({ a, b, c, d }: Matrix): boolean {
  const size = a * a + b * b + c * c + d * d;
  return Math.abs(a * c + b * d) <= 1e-9 * size && Math.abs(a * a + b * b - c * c - d * d) <= 1e-9 * size;
}

/**
 * A contour after a transformation. Arcs stay arcs where circles stay circles, and become arcs along their ellipse elsewhere (to
 * 2 um). An outline stays counter-clockwise and a hole clockwise where it is mirrored.
 */
export function transformed(contour: Contour, matrix: Matrix): Contour {
  const line = transformedLine([...contour, contour[0] ?? { x: 0, y: 0 }], matrix).slice(
    0,
    contour.length === 0 ? 0 : -1,
  );
  return determinant(matrix) < 0 ? reversed(line) : line;
}

/** An open line after a transformation, walked the same way; the bulge of its last vertex says nothing. */
export function transformedLine(line: readonly Vertex[], matrix: Matrix): Vertex[] {
  const circles = keepsCircles(matrix);
  const sign = Math.sign(determinant(matrix));
  return line.flatMap((from, i): Vertex[] => {
    const { x, y } = apply(matrix, from);
    const to = line[i + 1];
    if (to === undefined || from.bulge === undefined || Math.abs(from.bulge) < 1e-9) return [{ x, y }];
    if (circles) return [{ x, y, bulge: sign * from.bulge }];
    const arc = arcBetween(from, to, from.bulge);
    const axes = [
      { x: arc.radius, y: 0 },
      { x: 0, y: arc.radius },
    ].map((axis) => applyTo(matrix, axis));
    const ellipse = ellipseCurve(apply(matrix, arc.centre), axes[0]!, axes[1]!);
    const [first, ...rest] = arcsAlong(ellipse, arc.start, arc.start + arc.sweep);
    return [{ ...first!, x, y }, ...rest];
  });
}

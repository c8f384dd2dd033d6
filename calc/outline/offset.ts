import { finite, following, given, notNegative, type Outcome } from '../outcome.ts';
import { formDistance } from './distance.ts';
import { ellipseInsetArea } from './ellipse.ts';
import { formArea, formBounds, formPerimeter } from './measure.ts';
import { type PlainForm, plainForm, type RoundedBox } from './plain.ts';
import { convexInset, isConvex, signedArea } from './polygon.ts';
import type { Shape } from './shape.ts';

/**
 * Area inside the line that runs `by` (m) outside an outline, or inside it where `by` is negative; m2. Outwards round
 * corners (Steiner 1840: A + P d + pi d2 for convex outlines). 0 where nothing is left. Exact, except for polygons with
 * an inside corner: those are measured on a grid, to better than 0.1 % of the area.
 */
export function offsetArea(shape: Shape, by: number): Outcome {
  return given([finite('the offset', by)], () =>
    following(plainForm(shape), (form) => (by < 0 ? inset(form, -by) : outset(form, by))),
  );
}

/**
 * Length of the line that runs `by` (m) outside an outline, m: P + 2 pi d. Exact for convex and for smooth outlines; at
 * a sharp inside corner the line is shorter, so that tape and tube measured by it suffice.
 */
export function offsetPerimeter(shape: Shape, by: number): Outcome {
  return given([notNegative('the offset', by)], () =>
    following(plainForm(shape), (form) => formPerimeter(form) + 2 * Math.PI * by),
  );
}

function outset(form: PlainForm, by: number): number {
  if (form.kind === 'polygon' && by > 0 && !isConvex(form.points)) return areaWithin(form, by);
  return formArea(form) + formPerimeter(form) * by + Math.PI * by * by;
}

function inset(form: PlainForm, by: number): number {
  switch (form.kind) {
    case 'box':
      return boxInset(form, by);
    case 'ellipse':
      return ellipseInsetArea(form, by);
    case 'polygon':
      return isConvex(form.points) ? signedArea(convexInset(form.points, by)) : areaWithin(form, -by);
  }
}

function boxInset({ length, width, corner }: RoundedBox, by: number): number {
  if (2 * by >= Math.min(length, width)) return 0;
  return formArea({ kind: 'box', length: length - 2 * by, width: width - 2 * by, corner: Math.max(0, corner - by) });
}

const finest = 512;

/**
 * Area of the points nearer than `level` (m) to the outline's inside: a square is halved until the edge surely misses
 * it.
 */
function areaWithin(form: PlainForm, level: number): number {
  const { low, length, width } = formBounds(form);
  const margin = Math.max(0, level);
  const size = Math.max(length, width) + 2 * margin;
  const middle = { x: low.x + length / 2, y: low.y + width / 2 };
  const measure = (x: number, y: number, side: number, cells: number): number => {
    const beyond = formDistance(form, { x, y }) - level;
    if (Math.abs(beyond) >= side * Math.SQRT1_2) return beyond < 0 ? side * side : 0;
    if (cells === 1) return side * side * Math.min(1, Math.max(0, 0.5 - beyond / side));
    const [q, half, next] = [side / 4, side / 2, cells / 2];
    return (
      measure(x - q, y - q, half, next) +
      measure(x + q, y - q, half, next) +
      measure(x - q, y + q, half, next) +
      measure(x + q, y + q, half, next)
    );
  };
  return measure(middle.x, middle.y, size, finest);
}

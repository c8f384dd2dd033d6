import { following, type Outcome } from '../outcome.ts';
import { ellipsePerimeter } from './ellipse.ts';
import { type PlainForm, plainForm } from './plain.ts';
import { polygonPerimeter, signedArea } from './polygon.ts';
import type { Point, Shape } from './shape.ts';

/** Area inside an outline, m2. Closed forms, exact to rounding. */
export function shapeArea(shape: Shape): Outcome {
  return following(plainForm(shape), formArea);
}

/** Length round an outline, m. Closed forms; the ellipse by the arithmetic-geometric mean, exact to rounding. */
export function shapePerimeter(shape: Shape): Outcome {
  return following(plainForm(shape), formPerimeter);
}

/** The upright box round an outline, m. */
export interface Bounds {
  readonly low: Point;
  readonly high: Point;
  readonly length: number;
  readonly width: number;
}

export function shapeBounds(shape: Shape): Outcome<Bounds> {
  return following(plainForm(shape), formBounds);
}

/** The same outline about the centre of its bounding box, which is the origin of the part's frame. */
export function centredShape(shape: Shape): Outcome<Shape> {
  if (shape.kind !== 'polygon') return shape;
  return following(shapeBounds(shape), ({ low, high }) => {
    const x = (low.x + high.x) / 2;
    const y = (low.y + high.y) / 2;
    if (x === 0 && y === 0) return shape;
    return { kind: 'polygon' as const, points: shape.points.map((p) => ({ x: p.x - x, y: p.y - y })) };
  });
}

export function formArea(form: PlainForm): number {
  switch (form.kind) {
    case 'box':
      return form.length * form.width - (4 - Math.PI) * form.corner ** 2;
    case 'ellipse':
      return Math.PI * form.a * form.b;
    case 'polygon':
      return signedArea(form.points);
  }
}

export function formPerimeter(form: PlainForm): number {
  switch (form.kind) {
    case 'box':
      return 2 * (form.length + form.width) - (8 - 2 * Math.PI) * form.corner;
    case 'ellipse':
      return ellipsePerimeter(form);
    case 'polygon':
      return polygonPerimeter(form.points);
  }
}

export function formBounds(form: PlainForm): Bounds {
  if (form.kind === 'box') return about(form.length, form.width);
  if (form.kind === 'ellipse') return about(2 * form.a, 2 * form.b);
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of form.points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return { low: { x: left, y: low }, high: { x: right, y: high }, length: right - left, width: high - low };
}

function about(length: number, width: number): Bounds {
  const high = { x: length / 2, y: width / 2 };
  return { low: { x: -high.x, y: -high.y }, high, length, width };
}

import { finite, following, given, type Outcome } from '../outcome.ts';
import { contourDistance } from './contour-distance.ts';
import { ellipseDistance } from './ellipse.ts';
import { type PlainForm, plainForm, type RoundedBox } from './plain.ts';
import type { Point, Shape } from './shape.ts';

/** Distance of a point to an outline, m: negative inside, 0 on it. Exact for every computable shape. */
export function signedDistance(shape: Shape, point: Point): Outcome {
  return given([finite('the place along x', point.x), finite('the place along y', point.y)], () =>
    following(plainForm(shape), (form) => formDistance(form, point)),
  );
}

/** Whether a point lies inside an outline or on it (to a micrometre). */
export function contains(shape: Shape, point: Point): Outcome<boolean> {
  return following(signedDistance(shape, point), (distance) => distance <= 1e-6);
}

export function formDistance(form: PlainForm, point: Point): number {
  switch (form.kind) {
    case 'box':
      return boxDistance(form, point);
    case 'ellipse':
      return ellipseDistance(form, point);
    case 'contour':
      return contourDistance(form.vertices, point);
  }
}

function boxDistance({ length, width, corner }: RoundedBox, { x, y }: Point): number {
  const dx = Math.abs(x) - length / 2 + corner;
  const dy = Math.abs(y) - width / 2 + corner;
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - corner;
}

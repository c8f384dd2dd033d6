import { finite, following, given, notNegative, type Outcome } from '../outcome.ts';
import type { Contour } from './contour.ts';
import { isConvexContour } from './contour-measure.ts';
import { areaOf } from './contour-offset.ts';
import { ellipseInsetArea } from './ellipse.ts';
import { keptOffset } from './kept-offset.ts';
import { formArea, formPerimeter } from './measure.ts';
import { type PlainForm, plainForm, type RoundedBox } from './plain.ts';
import { convexInset, isConvex, signedArea } from './polygon.ts';
import type { Shape } from './shape.ts';

/**
 * Area inside the line that runs `by` (m) outside an outline, or inside it where `by` is negative; m2. Outwards round
 * corners (Steiner 1840: A + P d + pi d2 for convex outlines). 0 where nothing is left. Exact where straights and arcs
 * stay straights and arcs; where a bay closes or a neck parts, arcs are taken by chords that leave them by less than 0.02 mm.
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

function outset(form: PlainForm, by: number): Outcome {
  if (form.kind === 'contour' && by > 0 && !isConvexContour(form.vertices)) return contourOffsetArea(form.vertices, by);
  return formArea(form) + formPerimeter(form) * by + Math.PI * by * by;
}

function inset(form: PlainForm, by: number): Outcome {
  switch (form.kind) {
    case 'box':
      return boxInset(form, by);
    case 'ellipse':
      return ellipseInsetArea(form, by);
    case 'contour':
      return insetContour(form.vertices, by);
  }
}

function insetContour(contour: Contour, by: number): Outcome {
  const straight = contour.every((v) => (v.bulge ?? 0) === 0);
  return straight && isConvex(contour) ? signedArea(convexInset(contour, by)) : contourOffsetArea(contour, -by);
}

const contourOffsetArea = (contour: Contour, by: number): Outcome => following(keptOffset(contour, by), areaOf);

function boxInset({ length, width, corner }: RoundedBox, by: number): number {
  if (2 * by >= Math.min(length, width)) return 0;
  return formArea({ kind: 'box', length: length - 2 * by, width: width - 2 * by, corner: Math.max(0, corner - by) });
}

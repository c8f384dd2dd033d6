import { onceFor } from '../kept.ts';
import { following, type Outcome } from '../outcome.ts';
import { contourArea, contourBox, contourPerimeter } from './contour-measure.ts';
import { ellipsePerimeter } from './ellipse.ts';
import { type ContourForm, type PlainForm, plainForm, rememberForm } from './plain.ts';
import type { Point, Shape } from './shape.ts';
import { moved, transformed } from './transform.ts';

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
  if (shape.kind !== 'polygon' && shape.kind !== 'contour' && shape.kind !== 'path') return shape;
  return following(plainForm(shape), (form) => {
    if (form.kind !== 'contour') return shape;
    const { x, y } = middleOf(form);
    return x === 0 && y === 0 ? shape : aboutMiddle(form);
  });
}

function middleOf(form: ContourForm): Point {
  const { low, high } = formBounds(form);
  return { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 };
}

const aboutMiddle = onceFor((form: ContourForm): ContourForm => {
  const { x, y } = middleOf(form);
  const centred: ContourForm = { kind: 'contour', vertices: transformed(form.vertices, moved(-x, -y)) };
  // what is fit where it was drawn is fit where it is moved to
  rememberForm(centred, centred);
  return centred;
});

export function formArea(form: PlainForm): number {
  switch (form.kind) {
    case 'box':
      return form.length * form.width - (4 - Math.PI) * form.corner ** 2;
    case 'ellipse':
      return Math.PI * form.a * form.b;
    case 'contour':
      return contourArea(form.vertices);
  }
}

export function formPerimeter(form: PlainForm): number {
  switch (form.kind) {
    case 'box':
      return 2 * (form.length + form.width) - (8 - 2 * Math.PI) * form.corner;
    case 'ellipse':
      return ellipsePerimeter(form);
    case 'contour':
      return contourPerimeter(form.vertices);
  }
}

export function formBounds(form: PlainForm): Bounds {
  if (form.kind === 'box') return about(form.length, form.width);
  if (form.kind === 'ellipse') return about(2 * form.a, 2 * form.b);
  const [low, high] = contourBox(form.vertices);
  return { low, high, length: high.x - low.x, width: high.y - low.y };
}

function about(length: number, width: number): Bounds {
  const high = { x: length / 2, y: width / 2 };
  return { low: { x: -high.x, y: -high.y }, high, length, width };
}

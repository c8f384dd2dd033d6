import { text, type Words } from '../figure/figure.ts';
import { type Demand, demand, given, type Outcome, positive } from '../outcome.ts';
import { readPathOutline } from '../read-drawing/path-outline.ts';
import { isPicked } from '../read-drawing/pick.ts';
import { alike } from './alike.ts';
import type { Contour } from './contour.ts';
import { contourFault, contourFaultWords } from './contour-fault.ts';
import { contourBox, tidiedContour } from './contour-measure.ts';
import { tidied } from './polygon.ts';
import { faultWords, polygonFault } from './polygon-fault.ts';
import type { Shape } from './shape.ts';

/** A rectangle with round corners: also the rectangle (corner 0), the capsule and the circle. */
export interface RoundedBox {
  readonly kind: 'box';
  readonly length: number;
  readonly width: number;
  readonly corner: number;
}

export interface EllipseForm {
  readonly kind: 'ellipse';
  readonly a: number;
  readonly b: number;
}

/** Counter-clockwise, without points on straight edges; also the polygon. */
export interface ContourForm {
  readonly kind: 'contour';
  readonly vertices: Contour;
}

/** The three forms that every computable outline comes down to. */
export type PlainForm = RoundedBox | EllipseForm | ContourForm;

const remembered = new WeakMap<Shape, Outcome<PlainForm>>();

/** The checked plain form of a shape; its problem if it is no outline, or one of those that are not computed here. */
export function plainForm(shape: Shape): Outcome<PlainForm> {
  let form = remembered.get(shape);
  if (form === undefined) {
    const twin = alike(shape);
    form = twin === shape ? reduce(shape) : plainForm(twin);
    remembered.set(shape, form);
  }
  return form;
}

/** The form of a shape that was made of a checked one. */
export const rememberForm = (shape: Shape, form: PlainForm): void => {
  remembered.set(shape, form);
};

function reduce(shape: Shape): Outcome<PlainForm> {
  switch (shape.kind) {
    case 'rectangle':
      return given(sides(shape), () => ({ kind: 'box', length: shape.length, width: shape.width, corner: 0 }));
    case 'rounded':
      return given([...sides(shape), cornerFits(shape)], () => {
        const { length, width, corner } = shape;
        return { kind: 'box', length, width, corner: Math.min(corner, length / 2, width / 2) };
      });
    case 'capsule':
      return given(sides(shape), () => {
        const { length, width } = shape;
        return { kind: 'box', length, width, corner: Math.min(length, width) / 2 };
      });
    case 'circle': {
      const { diameter } = shape;
      const box: RoundedBox = { kind: 'box', length: diameter, width: diameter, corner: diameter / 2 };
      return given([size('the diameter of the circle', diameter)], () => box);
    }
    case 'ellipse':
      return given(sides(shape), () => ({ kind: 'ellipse', a: shape.length / 2, b: shape.width / 2 }));
    case 'polygon': {
      const fault = polygonFault(shape.points);
      if (fault !== undefined) return { problem: faultWords(fault) };
      const reach = shape.points.reduce((most, p) => Math.max(most, Math.abs(p.x), Math.abs(p.y)), 0);
      return given([size('the reach of the polygon', reach)], () => ({
        kind: 'contour',
        vertices: tidied(shape.points),
      }));
    }
    case 'contour':
      return contourForm(shape.vertices);
    case 'path': {
      const found = readPathOutline(shape.data);
      return isPicked(found) ? contourForm(found.contour) : { problem: found.message };
    }
    case 'file':
      return { problem: text('the outline lies in the file {file}, which is not read here', { file: shape.file }) };
  }
}

/** A line of straights and arcs that is fit to be an outline. */
function contourForm(line: Contour): Outcome<ContourForm> {
  const vertices = tidiedContour(line);
  const fault = contourFault(vertices);
  if (fault !== undefined) return { problem: contourFaultWords(fault) };
  const reach = contourBox(vertices).reduce((most, p) => Math.max(most, Math.abs(p.x), Math.abs(p.y)), 0);
  return given([size('the reach of the outline', reach)], () => ({ kind: 'contour', vertices }));
}

function sides({ kind, length, width }: Shape & { length: number; width: number }): Demand[] {
  return [
    size(text('the length of the {shape}', { shape: name(kind) }), length),
    size(text('the width of the {shape}', { shape: name(kind) }), width),
  ];
}

/** What is larger than a country or finer than a hair's thousandth is a slip of the pen, and would end in no number. */
function size(what: Words, value: number): Demand {
  const known = positive(what, value);
  return known ?? demand(value >= 1e-6 && value <= 1e6, text('{what} must lie between 1 um and 1000 km', { what }));
}

const name = (kind: string): Words => (kind === 'rounded' ? text('rounded rectangle') : kind);

function cornerFits({ length, width, corner }: Shape & { kind: 'rounded' }): Demand {
  if (!(corner >= 0)) return 'the corner radius must not be less than 0';
  const most = Math.min(length, width) / 2;
  return demand(corner <= most * (1 + 1e-9), 'the corner radius is more than half the shorter side');
}

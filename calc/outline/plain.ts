import { type Demand, demand, given, type Outcome, positive } from '../outcome.ts';
import { tidied } from './polygon.ts';
import { faultWords, polygonFault } from './polygon-fault.ts';
import type { Point, Shape } from './shape.ts';

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

/** Counter-clockwise, without points on straight edges. */
export interface PolygonForm {
  readonly kind: 'polygon';
  readonly points: readonly Point[];
}

/** The three forms that every computable outline comes down to. */
export type PlainForm = RoundedBox | EllipseForm | PolygonForm;

const remembered = new WeakMap<Shape, Outcome<PlainForm>>();

/** The checked plain form of a shape; its problem if it is no outline, or one of those that are not computed here. */
export function plainForm(shape: Shape): Outcome<PlainForm> {
  let form = remembered.get(shape);
  if (form === undefined) {
    form = reduce(shape);
    remembered.set(shape, form);
  }
  return form;
}

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
      return given([positive('the diameter of the circle', diameter)], () => box);
    }
    case 'ellipse':
      return given(sides(shape), () => ({ kind: 'ellipse', a: shape.length / 2, b: shape.width / 2 }));
    case 'polygon': {
      const fault = polygonFault(shape.points);
      return fault ? { problem: faultWords(fault) } : { kind: 'polygon', points: tidied(shape.points) };
    }
    case 'path':
    case 'file':
      return { problem: 'an outline from a drawing is not computed yet' };
  }
}

function sides({ kind, length, width }: Shape & { length: number; width: number }): Demand[] {
  return [positive(`the length of the ${name(kind)}`, length), positive(`the width of the ${name(kind)}`, width)];
}

const name = (kind: string) => (kind === 'rounded' ? 'rounded rectangle' : kind);

function cornerFits({ length, width, corner }: Shape & { kind: 'rounded' }): Demand {
  if (!(corner >= 0)) return 'the corner radius must not be less than 0';
  const most = Math.min(length, width) / 2;
  return demand(corner <= most * (1 + 1e-9), 'the corner radius is more than half the shorter side');
}

import type { Curve } from '../../outline/curve.ts';
import type { Point } from '../../outline/shape.ts';
import { limits } from '../limits.ts';
import type { Entity } from './content.ts';
import { numberOf } from './groups.ts';

/** A control point with its weight, in homogeneous coordinates. */
type Control = readonly [number, number, number];

/** One polynomial piece of a spline with the parameters at which it begins and ends. */
export interface SplinePiece extends Curve {
  readonly from: number;
  readonly to: number;
}

/** A SPLINE as its pieces; undefined where its degree, knots and control points do not belong together. */
export function readSpline({ groups }: Entity): readonly SplinePiece[] | undefined {
  const values = (code: number): number[] => groups.filter((g) => g.code === code).map((g) => numberOf(g.value));
  const degree = values(71)[0] ?? Number.NaN;
  const knots = values(40);
  const [x, y, weights] = [values(10), values(20), values(41)];
  const n = x.length;
  if (
    !(degree >= 1 && degree <= limits.splineDegree) ||
    n <= degree ||
    y.length !== n ||
    knots.length !== n + degree + 1
  )
    return undefined;
  const controls = x.map((px, i): Control => {
    const w = weights.length === n ? (weights[i] ?? Number.NaN) : 1;
    return [px * w, (y[i] ?? Number.NaN) * w, w];
  });
  const sound = knots.every((k, i) => Number.isFinite(k) && k >= (knots[i - 1] ?? -Infinity));
  if (!sound || !controls.every(([a, b, w]) => Number.isFinite(a) && Number.isFinite(b) && w > 0)) return undefined;
  const pieces: SplinePiece[] = [];
  for (let span = degree; span < n; span++) {
    const [from = 0, to = 0] = [knots[span], knots[span + 1]];
    if (to > from) pieces.push({ ...evaluated(degree, knots, controls, span), from, to });
  }
  return pieces.length === 0 ? undefined : pieces;
}

/**
 * The piece between knots `span` and `span + 1`. It is told by these also at its end: where a knot stands as often as the degree the
 * curve has a corner, and the next piece leaves it in another direction.
 * Source: de Boor 1972, "On calculating with B-splines"; the direction is that of the last step but one.
 */
function evaluated(degree: number, knots: readonly number[], controls: readonly Control[], span: number): Curve {
  const scratch = new Float64Array(3 * (degree + 1));
  const share = (i: number, level: number, t: number): number => {
    const [from, to] = [knots[i] ?? 0, knots[i + degree + 1 - level] ?? 0];
    return to > from ? (t - from) / (to - from) : 0;
  };
  const last = (t: number): readonly [Control, Control, number] => {
    for (let i = 0; i <= degree; i++) scratch.set(controls[span - degree + i]!, 3 * i);
    for (let level = 1; level < degree; level++) {
      for (let i = 0; i <= degree - level; i++) {
        const u = share(span - degree + level + i, level, t);
        for (let k = 3 * i; k < 3 * i + 3; k++) scratch[k] = scratch[k]! + u * (scratch[k + 3]! - scratch[k]!);
      }
    }
    const [ax = 0, ay = 0, aw = 1, bx = 0, by = 0, bw = 1] = scratch;
    return [[ax, ay, aw], [bx, by, bw], share(span, degree, t)];
  };
  return {
    at: (t) => {
      const [a, b, u] = last(t);
      return flat(between(a, b, u));
    },
    along: (t) => {
      const [a, b, u] = last(t);
      const [px, py, w] = between(a, b, u);
      return { x: (b[0] - a[0]) * w - px * (b[2] - a[2]), y: (b[1] - a[1]) * w - py * (b[2] - a[2]) };
    },
  };
}

const between = (a: Control, b: Control, t: number): Control => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

const flat = ([x, y, w]: Control): Point => ({ x: x / w, y: y / w });

import type { Point } from './shape.ts';

/** Half axes along x and y, m. */
export interface HalfAxes {
  readonly a: number;
  readonly b: number;
}

/**
 * Length round an ellipse, m: 4 a E(e) by the arithmetic-geometric mean, to the last digits of a double.
 * Source: Abramowitz and Stegun 1964, 17.6.3 and 17.6.4.
 */
export function ellipsePerimeter({ a, b }: HalfAxes): number {
  let mean = Math.max(a, b);
  const longest = mean;
  let geometric = Math.min(a, b);
  let difference = Math.sqrt(mean * mean - geometric * geometric);
  let weight = 0.5;
  let sum = weight * difference * difference;
  for (let i = 0; i < 40 && difference > mean * 1e-17; i++) {
    difference = (mean - geometric) / 2;
    const next = (mean + geometric) / 2;
    geometric = Math.sqrt(mean * geometric);
    mean = next;
    weight *= 2;
    sum += weight * difference * difference;
  }
  return (2 * Math.PI * (longest * longest - sum)) / mean;
}

/** The point whose outward normal has the angle `normal` (rad from x). */
export function pointByNormal({ a, b }: HalfAxes, normal: number): Point {
  const cos = Math.cos(normal);
  const sin = Math.sin(normal);
  const w = Math.hypot(a * cos, b * sin);
  return { x: (a * a * cos) / w, y: (b * b * sin) / w };
}

/** Length of the arc between two normals less than half a turn apart, m (Simpson's rule over the eccentric angle). */
export function arcBetweenNormals({ a, b }: HalfAxes, from: number, to: number): number {
  const eccentric = (normal: number) => {
    const cos = Math.cos(normal);
    const sin = Math.sin(normal);
    return normal + Math.atan2((b - a) * sin * cos, a * cos * cos + b * sin * sin);
  };
  const start = eccentric(from);
  const end = eccentric(to);
  return simpson((t) => Math.hypot(a * Math.sin(t), b * Math.cos(t)), start, end, 64);
}

/**
 * Distance of a point to the ellipse, m: negative inside. Source: the bisection of D. Eberly 2013, "Distance from a
 * point to an ellipse".
 */
export function ellipseDistance({ a, b }: HalfAxes, p: Point): number {
  const upright = a < b;
  const long = upright ? b : a;
  const short = upright ? a : b;
  const x = onAxis(Math.abs(upright ? p.y : p.x), long);
  const y = onAxis(Math.abs(upright ? p.x : p.y), short);
  const at = nearestOn(long, short, x, y);
  const distance = Math.hypot(at.x - x, at.y - y);
  return (x / long) ** 2 + (y / short) ** 2 < 1 ? -distance : distance;
}

/** A point so near to an axis that the bisection would lose it lies on the axis. */
const onAxis = (distance: number, half: number) => (distance < half * 1e-12 ? 0 : distance);

/** Nearest point in the first quadrant; `long` >= `short`. */
function nearestOn(long: number, short: number, x: number, y: number): Point {
  if (y === 0) {
    const focal = long * long - short * short;
    if (long * x >= focal) return { x: long, y: 0 };
    const share = (long * x) / focal;
    return { x: long * share, y: short * Math.sqrt(1 - share * share) };
  }
  if (x === 0) return { x: 0, y: short };
  const ratio = (long / short) ** 2;
  const u = x / long;
  const v = y / short;
  const s = root(ratio, u, v);
  return { x: (ratio * x) / (s + ratio), y: y / (s + 1) };
}

function root(ratio: number, u: number, v: number): number {
  let low = v - 1;
  let high = u * u + v * v < 1 ? 0 : Math.hypot(ratio * u, v) - 1;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const g = ((ratio * u) / (middle + ratio)) ** 2 + (v / (middle + 1)) ** 2 - 1;
    if (g === 0) return middle;
    if (g > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Area of what is left when an ellipse is drawn in by `by` all round, m2. Up to the smallest radius of the edge it is A
 * - P d + pi d2; beyond that the ends of the parallel curve fold over and are cut off where they meet on the long axis.
 */
export function ellipseInsetArea(axes: HalfAxes, by: number): number {
  const long = Math.max(axes.a, axes.b);
  const short = Math.min(axes.a, axes.b);
  if (by >= short) return 0;
  if (by <= (short * short) / long) return Math.PI * long * short - ellipsePerimeter(axes) * by + Math.PI * by * by;
  const sine = Math.sqrt(((by * long) / short) ** 2 - short * short) / Math.sqrt(long * long - short * short);
  const start = Math.asin(Math.min(1, sine));
  const slice = (t: number): number => {
    const w = Math.hypot(short * Math.cos(t), long * Math.sin(t));
    const height = Math.sin(t) * (short - (by * long) / w);
    const inward = Math.sin(t) * (long - (by * long * long * short) / (w * w * w));
    return height * inward;
  };
  return 4 * simpson(slice, start, Math.PI / 2, 512);
}

/** Simpson's rule with an even number of steps. */
function simpson(f: (t: number) => number, from: number, to: number, steps: number): number {
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}

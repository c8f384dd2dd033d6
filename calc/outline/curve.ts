import { arcBetween, sweepsOver, wrapped } from './arc.ts';
import type { Vertex } from './contour.ts';
import type { Point } from './shape.ts';

/** A smooth curve over a parameter: its point, and the direction it runs in there (any length; none where it stands still). */
export interface Curve {
  readonly at: (t: number) => Point;
  readonly along: (t: number) => Point;
}

/** What arcs may be off the curve that they stand for, m: a tenth of what a chord may be off an arc. */
const fitTolerance = 2e-6;

const deepest = 14;
const probes = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875] as const;

/**
 * A smooth curve from parameter `from` to `to` as arcs that are tangent to each other and to the curve where they touch it, no
 * more than `tolerance` (m) away from it at seven points between; the vertices they begin at, without the end of the curve.
 * Source of the pairs of arcs: the biarc of Bolton 1975, "Biarc curves", with equal lengths of both tangents.
 */
export function arcsAlong(curve: Curve, from: number, to: number, tolerance = fitTolerance): Vertex[] {
  const pieces = (t0: number, t1: number, depth: number): Vertex[] => {
    const pair = biarc(curve, t0, t1);
    if (depth >= deepest || isNear(pair, curve, t0, t1, tolerance)) return pair.slice(0, -1);
    const middle = (t0 + t1) / 2;
    return [...pieces(t0, middle, depth + 1), ...pieces(middle, t1, depth + 1)];
  };
  // At least two pieces: a curve that is the same to the left and to the right would be taken for its chord.
  const middle = (from + to) / 2;
  return [...pieces(from, middle, 1), ...pieces(middle, to, 1)];
}

/** From the curve's point at `t0` to that at `t1`: two arcs with a common tangent, or a straight where there are none. */
function biarc(curve: Curve, t0: number, t1: number): readonly Vertex[] {
  const [p, q] = [curve.at(t0), curve.at(t1)];
  const way = Math.sign(t1 - t0);
  const [u, v] = [unit(curve.along(t0), way), unit(curve.along(t1), way)];
  const straight = [p, q];
  if (u === undefined || v === undefined) return straight;
  const d = { x: q.x - p.x, y: q.y - p.y };
  const length = Math.hypot(d.x, d.y);
  if (length === 0) return straight;
  // |J - p| from d.d - 2 r d.(u + v) + 2 r^2 (u.v - 1) = 0, where r is the length of the tangents.
  const a = 2 * (u.x * v.x + u.y * v.y - 1);
  const b = -2 * (d.x * (u.x + v.x) + d.y * (u.y + v.y));
  const root = b * b - 4 * a * length * length;
  if (root < 0) return straight;
  const r = (2 * length * length) / (-b + Math.sqrt(root));
  if (!(r > 0) || !Number.isFinite(r) || r > 1e3 * length) return straight;
  const joint = { x: (p.x + q.x + r * (u.x - v.x)) / 2, y: (p.y + q.y + r * (u.y - v.y)) / 2 };
  const [first, second] = [bulgeAlong(p, joint, u), -bulgeAlong(q, joint, { x: -v.x, y: -v.y })];
  if (!(Math.abs(first) < 1 && Math.abs(second) < 1)) return straight;
  return [bent(p, first), bent(joint, second), q];
}

const bent = ({ x, y }: Point, bulge: number): Vertex => (Math.abs(bulge) < 1e-9 ? { x, y } : { x, y, bulge });

/** The bulge of the arc that leaves `from` in the direction `u` and comes to `to`: half the angle between them, halved. */
function bulgeAlong(from: Point, to: Point, u: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const half = Math.atan2(u.x * dy - u.y * dx, u.x * dx + u.y * dy);
  return Math.tan(wrapped(half) / 2);
}

/** The direction in which the curve is walked: against its own where the parameter falls. */
function unit({ x, y }: Point, way: number): Point | undefined {
  const length = Math.hypot(x, y) * way;
  return Math.abs(length) > 1e-300 && Number.isFinite(length) ? { x: x / length, y: y / length } : undefined;
}

function isNear(pair: readonly Vertex[], curve: Curve, t0: number, t1: number, tolerance: number): boolean {
  return probes.every((share) => {
    const p = curve.at(t0 + share * (t1 - t0));
    return pair.slice(0, -1).some((from, i) => distanceTo(from, pair[i + 1]!, p) <= tolerance);
  });
}

function distanceTo(from: Vertex, to: Point, p: Point): number {
  if (from.bulge !== undefined) {
    const arc = arcBetween(from, to, from.bulge);
    const [dx, dy] = [p.x - arc.centre.x, p.y - arc.centre.y];
    if (sweepsOver(arc, Math.atan2(dy, dx))) return Math.abs(Math.hypot(dx, dy) - arc.radius);
    return Math.min(Math.hypot(from.x - p.x, from.y - p.y), Math.hypot(to.x - p.x, to.y - p.y));
  }
  const [ex, ey] = [to.x - from.x, to.y - from.y];
  const t = Math.min(1, Math.max(0, ((p.x - from.x) * ex + (p.y - from.y) * ey) / (ex * ex + ey * ey || 1)));
  return Math.hypot(from.x + t * ex - p.x, from.y + t * ey - p.y);
}

/** The ellipse with the half axes `u` and `v` (vectors, conjugate) about `centre`, over the eccentric angle. */
export function ellipseCurve(centre: Point, u: Point, v: Point): Curve {
  return {
    at: (t) => ({
      x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
      y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
    }),
    along: (t) => ({ x: v.x * Math.cos(t) - u.x * Math.sin(t), y: v.y * Math.cos(t) - u.y * Math.sin(t) }),
  };
}

/** A Bezier curve over 0 to 1 by its control points (de Casteljau). */
export function bezierCurve(points: readonly Point[]): Curve {
  const between = (controls: readonly Point[], t: number): readonly Point[] =>
    controls.slice(1).map((q, i) => ({
      x: controls[i]!.x + t * (q.x - controls[i]!.x),
      y: controls[i]!.y + t * (q.y - controls[i]!.y),
    }));
  const down = (t: number, left: number): readonly Point[] => {
    let controls = points;
    while (controls.length > left) controls = between(controls, t);
    return controls;
  };
  return {
    at: (t) => down(t, 1)[0]!,
    along: (t) => {
      const [a, b] = down(t, 2) as readonly [Point, Point];
      const d = { x: b.x - a.x, y: b.y - a.y };
      if (Math.hypot(d.x, d.y) > 1e-12) return d;
      // Where two control points lie on each other the curve still has a tangent: towards the next one that does not.
      const aside = t < 0.5 ? t + 1e-6 : t - 1e-6;
      const [c, e] = down(aside, 2) as readonly [Point, Point];
      return { x: e.x - c.x, y: e.y - c.y };
    },
  };
}

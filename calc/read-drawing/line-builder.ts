import { bulgeOf } from '../outline/arc.ts';
import type { Vertex } from '../outline/contour.ts';
import { arcsAlong, bezierCurve, type Curve, ellipseCurve } from '../outline/curve.ts';
import type { Point } from '../outline/shape.ts';
import { apply, applyTo, determinant, keepsCircles, type Matrix } from '../outline/transform.ts';
import { limits } from './limits.ts';

/** A line as it was drawn, before loose ends are joined. */
export interface BuiltLine {
  readonly line: readonly Vertex[];
  readonly closed: boolean;
}

/** What all lines of a drawing may still use of its limit of straights and arcs. */
export interface Budget {
  vertices: number;
}

/** Ends nearer than this are one point, m: drawings are rounded. */
const sameEnd = 1e-6;

/**
 * Collects lines of straights and arcs from the commands of a drawing. Points are given as drawn and come out in metres by the
 * matrix; circles stay arcs where they stay circles, all other curves become arcs within 2 um.
 */
export class LineBuilder {
  private readonly found: BuiltLine[] = [];
  private current: Vertex[] = [];
  /** where the next piece of line begins, as drawn */
  private pen: Point | undefined;
  private start: Point | undefined;
  private lost = false;
  private readonly matrix: Matrix;
  private readonly circles: boolean;
  private readonly budget: Budget;

  constructor(matrix: Matrix, budget: Budget) {
    this.matrix = matrix;
    this.circles = keepsCircles(matrix);
    this.budget = budget;
  }

  /** Whether a coordinate was no number or out of reach: then nothing of this element holds. */
  get strange(): boolean {
    return this.lost;
  }

  get full(): boolean {
    return this.budget.vertices <= 0;
  }

  /** All lines so far; the one that is being drawn ends open. */
  lines(): readonly BuiltLine[] {
    this.end(false);
    return this.lost ? [] : this.found;
  }

  move(to: Point): void {
    this.end(false);
    this.pen = to;
    this.start = to;
  }

  straight(to: Point): void {
    const from = this.pen;
    this.pen = to;
    if (from !== undefined && (from.x !== to.x || from.y !== to.y)) this.add([apply(this.matrix, from)]);
  }

  bezier(...controls: readonly Point[]): void {
    const from = this.pen;
    this.pen = controls.at(-1);
    if (from === undefined || controls.every((p) => p.x === from.x && p.y === from.y)) return;
    this.add(arcsAlong(bezierCurve([from, ...controls].map((p) => apply(this.matrix, p))), 0, 1));
  }

  /** A curve in the drawing's units, from one parameter to another; it goes on where the pen is. */
  curve(curve: Curve, from: number, to: number): void {
    if (this.pen === undefined) this.move(curve.at(from));
    this.pen = curve.at(to);
    const { matrix } = this;
    const whole: Curve = { at: (t) => apply(matrix, curve.at(t)), along: (t) => applyTo(matrix, curve.along(t)) };
    this.add(arcsAlong(whole, from, to));
  }

  /** An arc of a circle or an ellipse about `centre`, with the half axes `u` and `v`, over the eccentric angle. */
  ellipse(centre: Point, u: Point, v: Point, start: number, sweep: number): void {
    const curve = ellipseCurve(centre, u, v);
    if (this.pen === undefined) this.move(curve.at(start));
    if (!(Math.abs(sweep) > 0)) return;
    const begin = this.pen;
    const even = Math.abs(u.x * v.x + u.y * v.y) + Math.abs(Math.hypot(u.x, u.y) - Math.hypot(v.x, v.y));
    // More than half a circle is told in two arcs: a bulge towards the whole circle would lose its place to rounding.
    const parts = Math.ceil(Math.abs(sweep) / Math.PI - 1e-9);
    const pieces = Array.from({ length: parts }, (_, i) => start + (i * sweep) / parts);
    if (this.circles && even <= 1e-9 * Math.hypot(u.x, u.y)) {
      const sign = Math.sign(determinant(this.matrix)) * Math.sign(u.x * v.y - u.y * v.x);
      const bulge = sign * bulgeOf(sweep / parts);
      this.add(pieces.map((t) => ({ ...apply(this.matrix, curve.at(t)), bulge })));
      this.pen = curve.at(start + sweep);
    } else for (const t of pieces) this.curve(curve, t, t + sweep / parts);
    // All the way round it ends where it began, to the last digit.
    if (Math.abs(Math.abs(sweep) - 2 * Math.PI) < 1e-9) this.pen = begin;
  }

  /** Says where the pen stands after a curve, to the last digit: computed ends are off by rounding. */
  stand(at: Point): void {
    this.pen = at;
  }

  /** Back to where the line began. */
  close(): void {
    if (this.start === undefined) return;
    this.straight(this.start);
    this.end(true);
    this.pen = this.start;
  }

  private add(vertices: readonly Vertex[]): void {
    this.budget.vertices -= vertices.length;
    if (this.full) return;
    for (const v of vertices) this.current.push(this.checked(v));
  }

  private checked<T extends Point>(v: T): T {
    if (!(Math.abs(v.x) <= limits.furthest && Math.abs(v.y) <= limits.furthest)) this.lost = true;
    return v;
  }

  private end(closed: boolean): void {
    const line = this.current;
    this.current = [];
    const last = this.pen;
    const first = line[0];
    if (first === undefined || last === undefined) return;
    const end = this.checked(apply(this.matrix, last));
    if (closed || Math.hypot(end.x - first.x, end.y - first.y) <= sameEnd) this.found.push({ line, closed: true });
    else this.found.push({ line: [...line, { x: end.x, y: end.y }], closed: false });
  }
}

import type { Vertex } from '../outline/contour.ts';
import { reversedLine } from '../outline/contour-measure.ts';
import { distanceBetween } from '../outline/polygon.ts';
import type { Point } from '../outline/shape.ts';
import type { DrawnCurve } from './drawn.ts';

/** Ends of lines that are no further apart are taken for one, m; how far they were is told. */
const joinTolerance = 0.1e-3;

/** Where very many lines end on one spot, no more of them are compared. */
const mostLookedAt = 64;

export interface Joined {
  readonly curves: readonly DrawnCurve[];
  /** the widest gap that was closed, m */
  readonly over: number;
}

/**
 * Joins open curves of one layer at their ends, nearest first, and closes what comes back to its beginning. What is left open
 * stays open.
 */
export function joined(curves: readonly DrawnCurve[], tolerance = joinTolerance): Joined {
  const out: DrawnCurve[] = [];
  let over = 0;
  const layers = Map.groupBy(curves, (c) => (c.closed ? undefined : `${c.hidden ?? ''}/${c.layer ?? ''}`));
  for (const [layer, group] of layers) {
    if (layer === undefined) out.push(...group);
    else {
      const chains = chained(group, tolerance);
      out.push(...chains.curves);
      over = Math.max(over, chains.over);
    }
  }
  return { curves: out, over };
}

function chained(curves: readonly DrawnCurve[], tolerance: number): Joined {
  const ends = new EndIndex(curves, tolerance);
  const out: DrawnCurve[] = [];
  let over = 0;
  for (const [i, curve] of curves.entries()) {
    if (!ends.take(i)) continue;
    let line = [...curve.line];
    // Onwards from the end, then, turned about, onwards from the beginning.
    for (let side = 0; side < 2; side++) {
      for (;;) {
        const found = ends.nearest(line.at(-1)!, line.length > 2 || line[0]?.bulge !== undefined ? line[0] : undefined);
        if (found === undefined) break;
        ends.take(found.curve);
        over = Math.max(over, found.gap);
        const next = curves[found.curve]!.line;
        line.pop();
        for (const v of found.last ? reversedLine(next) : next) line.push(v);
      }
      line = reversedLine(line);
    }
    const gap = distanceBetween(line[0]!, line.at(-1)!);
    const closes = gap <= tolerance && line.length > 2;
    if (closes) over = Math.max(over, gap);
    out.push({ ...curve, line: closes ? line.slice(0, -1) : line, closed: closes });
  }
  return { curves: out, over };
}

interface End {
  readonly curve: number;
  /** whether it is the last point of the curve */
  readonly last: boolean;
  readonly at: Vertex;
}

/** The free ends on a grid of squares as wide as the tolerance. */
class EndIndex {
  private readonly cells = new Map<string, End[]>();
  private readonly taken: boolean[];
  private readonly tolerance: number;

  constructor(curves: readonly DrawnCurve[], tolerance: number) {
    this.tolerance = tolerance;
    this.taken = curves.map(() => false);
    for (const [curve, { line }] of curves.entries()) {
      this.put({ curve, last: false, at: line[0]! });
      this.put({ curve, last: true, at: line.at(-1)! });
    }
  }

  /** Marks a curve as used; false where it was before. */
  take(curve: number): boolean {
    const free = !this.taken[curve];
    this.taken[curve] = true;
    return free;
  }

  /** The nearest free end; none where the own beginning is nearer: then the line closes. */
  nearest(p: Point, own: Point | undefined): (End & { readonly gap: number }) | undefined {
    let best: (End & { readonly gap: number }) | undefined;
    const [cx, cy] = this.cell(p);
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const end of this.free(`${cx + dx},${cy + dy}`)) {
          const gap = distanceBetween(end.at, p);
          if (gap <= (best?.gap ?? this.tolerance)) best = { ...end, gap };
        }
      }
    }
    return own !== undefined && best !== undefined && distanceBetween(own, p) <= best.gap ? undefined : best;
  }

  /** Some ends of a square that no line has taken; the taken ones are dropped on the way. */
  private free(key: string): readonly End[] {
    const there = this.cells.get(key) ?? [];
    let i = 0;
    while (i < Math.min(there.length, mostLookedAt)) {
      if (!this.taken[there[i]!.curve]) i++;
      else {
        const last = there.pop()!;
        if (i < there.length) there[i] = last;
      }
    }
    return there.slice(0, i);
  }

  private put(end: End): void {
    const [cx, cy] = this.cell(end.at);
    const key = `${cx},${cy}`;
    const there = this.cells.get(key);
    if (there === undefined) this.cells.set(key, [end]);
    else there.push(end);
  }

  private cell({ x, y }: Point): readonly [number, number] {
    return [Math.floor(x / this.tolerance), Math.floor(y / this.tolerance)];
  }
}

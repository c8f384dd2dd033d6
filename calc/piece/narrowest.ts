import type { Contour } from '../outline/contour.ts';
import { contourDistance } from '../outline/contour-distance.ts';
import { flattened } from '../outline/flatten.ts';
import type { Point } from '../outline/shape.ts';
import { edgeTurns } from './edge-turns.ts';
import { headingAt, pointAt, rimOf } from './rim.ts';

/** The narrowest place of an outline. */
export interface Narrow {
  /** radius of the disc that touches both sides there, m: half the width */
  readonly half: number;
  /** its middle */
  readonly at: Point;
}

/** Sides face each other where the disc touches them more than 120 degrees apart: two sides of a corner do not. */
const facing = 0.5;

/** Places round the outline from which the other side is looked for, besides its corners. */
const looks = 256;

const kept = new WeakMap<Contour, { inside?: Narrow | null; outside?: Narrow | null }>();

/**
 * The narrowest place between sides that face each other, inside a counter-clockwise outline or, across its bays, outside of it;
 * none where no sides do. From a point of the edge the disc that touches the edge there grows until it touches another side: its
 * middle lies on the medial axis (Blum 1967). Exact for straight sides; arcs are taken as chords within 0.02 mm of them.
 */
export function narrowest(contour: Contour, side: 'inside' | 'outside' = 'inside'): Narrow | undefined {
  const found = kept.get(contour) ?? {};
  kept.set(contour, found);
  if (found[side] === undefined) found[side] = find(contour, side === 'inside' ? 1 : -1) ?? null;
  return found[side] ?? undefined;
}

interface Wall {
  readonly a: Point;
  readonly ux: number;
  readonly uy: number;
  readonly length: number;
}

function find(contour: Contour, sign: 1 | -1): Narrow | undefined {
  const rim = rimOf(contour);
  const points = flattened(contour);
  const walls = points.map((a, i): Wall => {
    const b = points[(i + 1) % points.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return { a, ux: (b.x - a.x) / length, uy: (b.y - a.y) / length, length };
  });
  let best: Narrow | undefined;
  const look = (p: Point, heading: number) => {
    const [nx, ny] = [-Math.sin(heading) * sign, Math.cos(heading) * sign];
    const half = grown(p, nx, ny, walls, sign, best?.half ?? Infinity);
    if (half === undefined) return;
    const at = { x: p.x + half * nx, y: p.y + half * ny };
    // a disc that another side stops before does not reach over there
    if (-contourDistance(contour, at) * sign >= half * 0.99) best = { half, at };
  };
  for (let i = 0; i < looks; i++) {
    // not from a corner itself, where there are two normals
    const place = ((i + 0.382) / looks) * rim.length;
    look(pointAt(rim, place), headingAt(rim, place));
  }
  // a neck is often narrowest at a corner that points inwards: from there it is looked all over the angle of its normals
  const turns = edgeTurns(contour);
  const corners = turns.filter(({ kind, turn }) => kind === 'corner' && turn * sign < -sharp);
  const step = Math.max(1, Math.ceil(corners.length / looks));
  for (let i = 0; i < corners.length; i += step) {
    const { segment, heading, turn } = corners[i]!;
    for (let k = 0; k <= fan; k++) look(segment.to, heading + (k / fan) * turn);
  }
  return best;
}

/** A corner that turns by less (rad) is as good as smooth. */
const sharp = 0.1;

/** Directions in which it is looked from a corner. */
const fan = 16;

/** Radius of the disc that touches `p` with its middle along the normal and then a side that faces `p`, if less than `most`. */
function grown(
  p: Point,
  nx: number,
  ny: number,
  walls: readonly Wall[],
  sign: 1 | -1,
  most: number,
): number | undefined {
  let least = most;
  for (const { a, ux, uy, length } of walls) {
    const [mx, my] = [-uy * sign, ux * sign];
    const cos = nx * mx + ny * my;
    const [dx, dy] = [p.x - a.x, p.y - a.y];
    const r = cos > -facing ? Infinity : (dx * mx + dy * my) / (1 - cos);
    const along = (dx + r * nx) * ux + (dy + r * ny) * uy;
    if (r > 1e-9 && along >= 0 && along <= length) least = Math.min(least, r);
    // the far end of a wall is the near end of the next
    const ahead = -dx * nx - dy * ny;
    if (ahead <= 1e-9) continue;
    const through = (dx * dx + dy * dy) / (2 * ahead);
    if (through < least && ahead / through - 1 >= facing) least = through;
  }
  return least < most ? least : undefined;
}

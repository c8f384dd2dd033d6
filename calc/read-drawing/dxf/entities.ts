import type { Point } from '../../outline/shape.ts';
import type { LineBuilder } from '../line-builder.ts';
import { type Entity, numberIn } from './content.ts';
import { numberOf } from './groups.ts';
import { readSpline } from './spline.ts';

const degrees = Math.PI / 180;

const pointIn = (entity: Pick<Entity, 'groups'>, x: number): Point => ({
  x: numberIn(entity, x, Number.NaN),
  y: numberIn(entity, x + 10, Number.NaN),
});

/** From one angle on to the next, counter-clockwise; the whole way round where they are the same. */
function onwards(start: number, end: number): number {
  const turn = 2 * Math.PI;
  const sweep = (((end - start) % turn) + turn) % turn;
  return sweep < 1e-9 ? turn : sweep;
}

function circle(centre: Point, radius: number, start: number, sweep: number, into: LineBuilder): void {
  into.move({ x: centre.x + radius * Math.cos(start), y: centre.y + radius * Math.sin(start) });
  into.ellipse(centre, { x: radius, y: 0 }, { x: 0, y: radius }, start, sweep);
}

interface Corner extends Point {
  readonly bulge: number;
}

function polyline(corners: readonly Corner[], closed: boolean, into: LineBuilder): void {
  const [first] = corners;
  if (first === undefined) return;
  into.move(first);
  corners.forEach((from, i) => {
    const to = corners[i + 1] ?? (closed ? first : undefined);
    if (to === undefined) return;
    if (Math.abs(from.bulge) < 1e-9 || (from.x === to.x && from.y === to.y)) into.straight(to);
    else arc(from, to, into);
  });
  if (closed) into.close();
}

/** The arc from one corner to the next by its bulge (AutoCAD DXF reference, group code 42: tan of a quarter of its angle). */
function arc(from: Corner, to: Point, into: LineBuilder): void {
  const aside = (1 - from.bulge * from.bulge) / (4 * from.bulge);
  const centre = {
    x: (from.x + to.x) / 2 - (to.y - from.y) * aside,
    y: (from.y + to.y) / 2 + (to.x - from.x) * aside,
  };
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  into.ellipse(centre, { x: radius, y: 0 }, { x: 0, y: radius }, start, 4 * Math.atan(from.bulge));
  into.stand(to);
}

/** What entities look like; false where one is not told fully. Source of the codes: AutoCAD DXF reference, "Entities section". */
export const drawEntity: Readonly<Record<string, (entity: Entity, into: LineBuilder) => boolean>> = {
  LINE: (entity, into) => {
    into.move(pointIn(entity, 10));
    into.straight(pointIn(entity, 11));
    return true;
  },
  CIRCLE: (entity, into) => {
    circle(pointIn(entity, 10), numberIn(entity, 40, Number.NaN), 0, 2 * Math.PI, into);
    into.close();
    return true;
  },
  ARC: (entity, into) => {
    const [start, end] = [numberIn(entity, 50) * degrees, numberIn(entity, 51, 360) * degrees];
    circle(pointIn(entity, 10), numberIn(entity, 40, Number.NaN), start, onwards(start, end), into);
    return true;
  },
  ELLIPSE: (entity, into) => {
    const centre = pointIn(entity, 10);
    const u = pointIn(entity, 11);
    const ratio = numberIn(entity, 40, 1);
    // Told in the coordinates of the world; seen from below it runs the other way round.
    const way = numberIn(entity, 230, 1) < 0 ? -ratio : ratio;
    const v = { x: -u.y * way, y: u.x * way };
    const start = numberIn(entity, 41, 0);
    const sweep = onwards(start, numberIn(entity, 42, 2 * Math.PI));
    const [cos, sin] = [Math.cos(start), Math.sin(start)];
    into.move({ x: centre.x + u.x * cos + v.x * sin, y: centre.y + u.y * cos + v.y * sin });
    into.ellipse(centre, u, v, start, sweep);
    if (sweep > 2 * Math.PI - 1e-9) into.close();
    return true;
  },
  LWPOLYLINE: (entity, into) => {
    const corners: { x: number; y: number; bulge: number }[] = [];
    for (const { code, value } of entity.groups) {
      const last = corners.at(-1);
      if (code === 10) corners.push({ x: numberOf(value), y: Number.NaN, bulge: 0 });
      else if (code === 20 && last !== undefined) last.y = numberOf(value);
      else if (code === 42 && last !== undefined) last.bulge = numberOf(value);
    }
    polyline(corners, (numberIn(entity, 70) & 1) === 1, into);
    return true;
  },
  POLYLINE: (entity, into) => {
    const flags = numberIn(entity, 70);
    // Meshes of polygons are no curves.
    if ((flags & (16 | 64)) !== 0) return false;
    // The control points of a fitted curve stand among its corners, with the flag 16.
    const corners = (entity.vertices ?? [])
      .filter((vertex) => (numberIn(vertex, 70) & 16) === 0)
      .map((vertex): Corner => ({ ...pointIn(vertex, 10), bulge: numberIn(vertex, 42) }));
    polyline(corners, (flags & 1) === 1, into);
    return true;
  },
  SPLINE: (entity, into) => {
    const spline = readSpline(entity);
    if (spline === undefined) return false;
    into.move(spline[0]!.at(spline[0]!.from));
    for (const piece of spline) {
      if (into.full) break;
      into.curve(piece, piece.from, piece.to);
    }
    if ((numberIn(entity, 70) & 1) === 1) into.close();
    return true;
  },
};

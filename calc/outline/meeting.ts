import { type Segment, sweepsOver } from './arc.ts';
import type { Point } from './shape.ts';

/** Where two straights or arcs meet or touch, to within `near` (m); of those that lie on each other, ends that they share. */
export function meetings(a: Segment, b: Segment, near: number): Point[] {
  return candidates(a, b, near).filter((p) => isOn(a, p, near) && isOn(b, p, near));
}

/** Whether a point lies on a segment, to within `near` (m). */
export function isOn(s: Segment, { x, y }: Point, near: number): boolean {
  if (Math.hypot(s.from.x - x, s.from.y - y) <= near || Math.hypot(s.to.x - x, s.to.y - y) <= near) return true;
  if (s.arc !== undefined) {
    const off = Math.hypot(x - s.arc.centre.x, y - s.arc.centre.y);
    const reach = Math.abs(off - s.arc.radius);
    return reach <= near && sweepsOver(s.arc, Math.atan2(y - s.arc.centre.y, x - s.arc.centre.x));
  }
  const [ex, ey] = [s.to.x - s.from.x, s.to.y - s.from.y];
  const length = Math.hypot(ex, ey);
  const along = (x - s.from.x) * ex + (y - s.from.y) * ey;
  const off = (x - s.from.x) * ey - (y - s.from.y) * ex;
  return along >= 0 && along <= length * length && Math.abs(off) <= near * length;
}

/** Where the whole lines or circles of two segments meet. */
function candidates(a: Segment, b: Segment, near: number): Point[] {
  if (a.arc !== undefined && b.arc !== undefined) return ofCircles(a, b, near);
  if (a.arc !== undefined) return ofLineAndCircle(b, a, near);
  return b.arc === undefined ? ofLines(a, b) : ofLineAndCircle(a, b, near);
}

const ends = (a: Segment, b: Segment): Point[] => [a.from, a.to, b.from, b.to];

function ofLines(a: Segment, b: Segment): Point[] {
  const [rx, ry] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const [sx, sy] = [b.to.x - b.from.x, b.to.y - b.from.y];
  const cross = rx * sy - ry * sx;
  if (Math.abs(cross) <= 1e-12 * Math.hypot(rx, ry) * Math.hypot(sx, sy)) return ends(a, b);
  const t = ((b.from.x - a.from.x) * sy - (b.from.y - a.from.y) * sx) / cross;
  return [{ x: a.from.x + t * rx, y: a.from.y + t * ry }];
}

function ofLineAndCircle(line: Segment, { arc }: Segment, near: number): Point[] {
  if (arc === undefined) return [];
  const [ex, ey] = [line.to.x - line.from.x, line.to.y - line.from.y];
  const length = Math.hypot(ex, ey);
  if (length === 0) return [];
  const [ux, uy] = [ex / length, ey / length];
  const along = (arc.centre.x - line.from.x) * ux + (arc.centre.y - line.from.y) * uy;
  const foot = { x: line.from.x + along * ux, y: line.from.y + along * uy };
  const off = Math.hypot(foot.x - arc.centre.x, foot.y - arc.centre.y);
  if (off > arc.radius + near) return [];
  const half = Math.sqrt(Math.max(0, (arc.radius - off) * (arc.radius + off)));
  return [half, -half].map((d) => ({ x: foot.x + d * ux, y: foot.y + d * uy }));
}

function ofCircles(a: Segment, b: Segment, near: number): Point[] {
  if (a.arc === undefined || b.arc === undefined) return [];
  const [p, r] = [a.arc.centre, a.arc.radius];
  const [q, s] = [b.arc.centre, b.arc.radius];
  const apart = Math.hypot(q.x - p.x, q.y - p.y);
  if (apart <= near && Math.abs(r - s) <= near) return ends(a, b);
  if (apart === 0 || apart > r + s + near || apart < Math.abs(r - s) - near) return [];
  const along = (apart + ((r - s) * (r + s)) / apart) / 2;
  const half = Math.sqrt(Math.max(0, (r - along) * (r + along)));
  const [ux, uy] = [(q.x - p.x) / apart, (q.y - p.y) / apart];
  return [half, -half].map((d) => ({ x: p.x + along * ux - d * uy, y: p.y + along * uy + d * ux }));
}

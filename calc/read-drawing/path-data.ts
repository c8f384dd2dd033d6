import { type Text, text } from '../figure/figure.ts';
import type { Point } from '../outline/shape.ts';
import { limits } from './limits.ts';
import type { LineBuilder } from './line-builder.ts';
import { type PathCommand, type PathFault, readCommands } from './path-commands.ts';

/** What is wrong with path data, and at which character of it (from 1) where that is known. */
export interface PathProblem {
  readonly message: Text;
  readonly position?: number;
}

/** Reads SVG path data into lines; says what cannot be read, and draws nothing of the rest then. */
export function drawPath(data: string, into: LineBuilder): PathProblem | undefined {
  if (/^[\s,]*[^\s,mM]/.test(data))
    return { message: text('the path data cannot be read: it begins with M and a point') };
  let commands = 0;
  const fault = readCommands(data, (command, pen) => {
    if (++commands > limits.pathCommands || into.full) return false;
    draw(command, pen, into);
    return true;
  });
  if (commands > limits.pathCommands)
    return { message: text('the path has more than {most} commands', { most: limits.pathCommands }) };
  return fault === undefined ? undefined : unreadable(data, fault);
}

function unreadable(data: string, { at, unknown }: PathFault): PathProblem {
  if (unknown !== undefined)
    return {
      message: text('the path has a command that SVG does not know: {command}', { command: unknown }),
      position: at + 1,
    };
  const rest = data.slice(at, at + 12).replace(/\s+/g, ' ');
  const message =
    rest === ''
      ? text('the path data ends at character {position}, where a number is missing', { position: at + 1 })
      : text('the path data cannot be read at character {position}: {rest}', { position: at + 1, rest });
  return { message, position: at + 1 };
}

function draw([command, ...n]: PathCommand, pen: Point, into: LineBuilder): void {
  const point = (i: number): Point => ({ x: n[i] ?? Number.NaN, y: n[i + 1] ?? Number.NaN });
  if (command === 'M') into.move(point(0));
  else if (command === 'L') into.straight(point(0));
  else if (command === 'C') into.bezier(point(0), point(2), point(4));
  else if (command === 'Q') into.bezier(point(0), point(2));
  else if (command === 'A') drawArc(pen, n, into);
  else into.close();
}

/**
 * An elliptical arc from its ends to its centre. Source: SVG 1.1 specification, appendix F.6.5 (conversion) and F.6.6
 * (radii that are 0, below 0 or too small).
 */
function drawArc(from: Point, n: readonly number[], into: LineBuilder): void {
  const [rx0 = 0, ry0 = 0, turn = 0, large = 0, sweeps = 0, x = 0, y = 0] = n;
  let [rx, ry] = [Math.abs(rx0), Math.abs(ry0)];
  if (rx === 0 || ry === 0) into.straight({ x, y });
  if (rx === 0 || ry === 0 || (from.x === x && from.y === y)) return;
  const phi = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [hx, hy] = [(from.x - x) / 2, (from.y - y) / 2];
  const [px, py] = [cos * hx + sin * hy, cos * hy - sin * hx];
  const needed = (px / rx) ** 2 + (py / ry) ** 2;
  if (needed > 1) [rx, ry] = [rx * Math.sqrt(needed), ry * Math.sqrt(needed)];
  const [a, b] = [(rx * py) ** 2, (ry * px) ** 2];
  const root = Math.sqrt(Math.max(0, ((rx * ry) ** 2 - a - b) / (a + b))) * (large === sweeps ? -1 : 1);
  const [qx, qy] = [(root * rx * py) / ry, (-root * ry * px) / rx];
  const centre = { x: cos * qx - sin * qy + (from.x + x) / 2, y: sin * qx + cos * qy + (from.y + y) / 2 };
  const start = Math.atan2((py - qy) / ry, (px - qx) / rx);
  const end = Math.atan2((-py - qy) / ry, (-px - qx) / rx);
  let sweep = end - start;
  if (sweeps === 0 && sweep > 0) sweep -= 2 * Math.PI;
  if (sweeps === 1 && sweep < 0) sweep += 2 * Math.PI;
  into.ellipse(centre, { x: rx * cos, y: rx * sin }, { x: -ry * sin, y: ry * cos }, start, sweep);
  into.stand({ x, y });
}

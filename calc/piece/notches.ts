import { keptWith } from '../kept.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';
import type { Mark } from './flat-piece.ts';
import { chordsOn, onLine } from './half-plane.ts';

/** How far a notch goes in from the edge, m; and how far from its middle no dart is cut. Common practice. */
export const notchDepth = 0.005;
export const notchClear = 0.004;

/**
 * Notches where the two axes of a frame meet the edge of a piece, so that it is laid straight and in its place: outermost on
 * either side, each a short line straight inwards along its axis.
 */
export const notchesOf = (contour: Contour, centre: Point, angle: number): readonly Mark[] =>
  kept(contour, `${centre.x} ${centre.y} ${angle}`, () => found(contour, centre, angle));

const kept = keptWith<Contour, readonly Mark[]>();

function found(contour: Contour, centre: Point, angle: number): readonly Mark[] {
  return [angle, angle + Math.PI / 2].flatMap((axis) => {
    const way = { x: Math.cos(axis), y: Math.sin(axis) };
    // `way` is the normal turned by a quarter to the right
    const normal = { x: -way.y, y: way.x };
    const half = { normal, from: normal.x * centre.x + normal.y * centre.y };
    const chords = chordsOn(contour, half);
    const [first, last] = [chords[0]?.[0], chords.at(-1)?.[1]];
    if (first === undefined || last === undefined) return [];
    const deep = Math.min(notchDepth, (last - first) / 4);
    return [
      [first, first + deep],
      [last, last - deep],
    ].map(([edge, inner]): Mark => {
      return { kind: 'notch', line: [onLine(half, edge!), onLine(half, inner!)], closed: false };
    });
  });
}

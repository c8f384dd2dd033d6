import type { Stretch } from '../curve/surface.ts';
import { quantity, text } from '../figure/figure.ts';
import { keptWith } from '../kept.ts';
import { following, type Outcome } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { contourArea, contourBox } from '../outline/contour-measure.ts';
import { contourOf } from '../outline/contour-of.ts';
import { keptOffset } from '../outline/kept-offset.ts';
import type { Placed } from '../outline/shape.ts';
import { after, identity, type Matrix, moved, scaled, transformed, turned } from '../outline/transform.ts';
import { LENGTH } from '../quantity/dimension.ts';
import { clipped } from './half-plane.ts';

/** A flat shape: its outer line counter-clockwise, its holes clockwise. */
export interface Flat {
  readonly outer: Contour;
  readonly holes: readonly Contour[];
}

const matrixOf = ({ centre, angle }: Placed): Matrix =>
  centre.x === 0 && centre.y === 0 && (angle ?? 0) === 0
    ? identity
    : after(moved(centre.x, centre.y), turned(angle ?? 0));

const placedContours = keptWith<Contour, Contour>();

/**
 * The outline of a placed shape in the frame of the part; on a curved tool, with its `stretch`, as it lies rolled out flat about
 * the middle of the part.
 */
export function placedContour(placed: Placed, stretch?: Stretch): Outcome<Contour> {
  return following(contourOf(placed.shape), (own) => {
    const lying = matrixOf(placed);
    const matrix = stretch === undefined ? lying : after(scaled(stretch.along, stretch.across), lying);
    if (matrix === identity) return own;
    const { a, b, c, d, e, f } = matrix;
    return placedContours(own, `${a} ${b} ${c} ${d} ${e} ${f}`, () => transformed(own, matrix));
  });
}

/** A thing that keeps its own size where it lies on a stretched layer: an insert, a groove. */
export const movedOn = (placed: Placed, stretch: Stretch | undefined): Placed =>
  stretch === undefined
    ? placed
    : { ...placed, centre: { x: placed.centre.x * stretch.along, y: placed.centre.y * stretch.across } };

/** No cloth reaches further past its part; the arcs of such a line would have no end of chords. m */
const furthest = 20;

/** The line that runs `by` (m) outside a contour, or inside it; kept with it. */
export function offsetLines(contour: Contour, by: number): Outcome<readonly Contour[]> {
  if (!(by <= furthest))
    return {
      problem: text('the piece would reach more than {most} past the edge', { most: quantity(furthest, LENGTH) }),
    };
  const [low, high] = contourBox(contour);
  return -2 * by >= Math.min(high.x - low.x, high.y - low.y) ? [] : keptOffset(contour, by);
}

export interface Grown {
  readonly placed: Placed;
  /** m past its outline, inwards where negative */
  readonly out: number;
  /** cut off at the end of low x of its own frame and at the other one, m */
  readonly shorter?: readonly [number, number];
  readonly stretch?: Stretch;
}

/** What a shape is cut as, piece by piece: grown all round and cut off at its ends; none where nothing is left of it. */
export function grownContours({ placed, out, shorter = [0, 0], stretch }: Grown): Outcome<readonly Flat[]> {
  return following(placedContour(placed, stretch), (contour) =>
    following(offsetLines(contour, out), (lines) => cutOff(flats(lines), placed, shorter)),
  );
}

/** Outer lines with the holes that lie in them; the largest first. */
function flats(lines: readonly Contour[]): Flat[] {
  const outer = lines.filter((line) => contourArea(line) > 0).sort((a, b) => contourArea(b) - contourArea(a));
  const holes = lines.filter((line) => contourArea(line) < 0);
  // a hole comes only of a bay that closed: it lies in the one piece that there is
  return outer.map((line, i) => ({ outer: line, holes: i === 0 ? holes : [] }));
}

function cutOff(pieces: readonly Flat[], { angle }: Placed, [low, high]: readonly [number, number]): readonly Flat[] {
  if (low === 0 && high === 0) return pieces;
  const along = { x: Math.cos(angle ?? 0), y: Math.sin(angle ?? 0) };
  const against = { x: -along.x, y: -along.y };
  const turn = turned(-(angle ?? 0));
  const boxes = pieces.map(({ outer }) => contourBox(transformed(outer, turn)));
  const from = Math.min(...boxes.map(([corner]) => corner.x)) + low;
  const to = Math.max(...boxes.map(([, corner]) => corner.x)) - high;
  return pieces.flatMap(({ outer, holes }) =>
    clipped(outer, { normal: along, from })
      .flatMap((left) => clipped(left, { normal: against, from: -to }))
      .map((line) => ({ outer: line, holes })),
  );
}

/** m2, less the holes */
export const flatArea = (pieces: readonly Flat[]): number =>
  pieces.reduce(
    (sum, { outer, holes }) => sum + [outer, ...holes].reduce((all, line) => all + contourArea(line), 0),
    0,
  );

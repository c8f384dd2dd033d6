import { text } from '../figure/figure.ts';
import { type Demand, finite, following, given, isImpossible, type Outcome } from '../outcome.ts';
import { formDistance } from './distance.ts';
import { shapeArea, shapePerimeter } from './measure.ts';
import { plainForm } from './plain.ts';
import { samples } from './samples.ts';
import { intoFrame, origin, outOfFrame, type Placed, type Point, type Shape } from './shape.ts';

/**
 * How far one shape stands out of another: `by` m at the worst place, negative where it clears the edge by that much.
 */
export interface StandsOut {
  readonly by: number;
  readonly at: Point;
}

const samplesRound = 512;

/**
 * How far `inner` stands out of `outer`, at the worst of 512 or more points of its outline with every corner among them
 * (on a curve between two points less than 2e-5 of its size is missed).
 */
export function standsOut(inner: Placed, outer: Placed): Outcome<StandsOut> {
  return given([...placeDemands(inner), ...placeDemands(outer)], () =>
    following(plainForm(outer.shape), (form) =>
      following(edgePoints(inner), (points) => {
        let worst: StandsOut = { by: -Infinity, at: origin };
        for (const at of points) {
          const by = formDistance(form, intoFrame(outer, at));
          if (by > worst.by) worst = { by, at };
        }
        return worst;
      }),
    ),
  );
}

/** Whether `inner` lies wholly inside `outer`, touching allowed; `within` (m) is what it may stand out. */
export function shapeInsideShape(inner: Placed, outer: Placed, within = 1e-6): Outcome<boolean> {
  return following(standsOut(inner, outer), ({ by }) => by <= within);
}

/** Whether two shapes share more than an edge (sampled like `standsOut`). */
export function shapesOverlap(a: Placed, b: Placed): Outcome<boolean> {
  return given([...placeDemands(a), ...placeDemands(b)], () =>
    following(reachesInto(a, b), (found) => found || sharesMiddle(a, b) || reachesInto(b, a)),
  );
}

/** Area of an outline less its cutouts, m2. Each cutout must lie inside the outline and clear of the others. */
export function netArea(outline: Shape, cutouts: readonly Placed[] = []): Outcome {
  const whole: Placed = { shape: outline, centre: origin };
  let area = shapeArea(outline);
  for (const [i, cutout] of cutouts.entries()) {
    if (isImpossible(area)) return area;
    const problem = cutoutProblem(whole, cutouts, i);
    if (problem !== undefined) return { problem };
    const hole = shapeArea(cutout.shape);
    if (isImpossible(hole)) return hole;
    area -= hole;
  }
  return area;
}

const placeDemands = ({ centre, angle }: Placed): Demand[] => [
  finite('the place along x', centre.x),
  finite('the place along y', centre.y),
  finite('the angle', angle ?? 0),
];

function cutoutProblem(whole: Placed, cutouts: readonly Placed[], i: number): Demand {
  const cutout = cutouts[i]!;
  const inside = shapeInsideShape(cutout, whole);
  if (isImpossible(inside)) return inside.problem;
  if (!inside) return text('cutout {number} is not wholly inside the outline', { number: i + 1 });
  for (let j = 0; j < i; j++) {
    const overlap = shapesOverlap(cutout, cutouts[j]!);
    if (isImpossible(overlap)) return overlap.problem;
    if (overlap) return text('cutouts {one} and {other} overlap', { one: j + 1, other: i + 1 });
  }
  return undefined;
}

function edgePoints(placed: Placed): Outcome<readonly Point[]> {
  return following(shapePerimeter(placed.shape), (perimeter) =>
    following(samples(placed.shape, perimeter / samplesRound), (points) => points.map((p) => outOfFrame(placed, p))),
  );
}

function reachesInto(a: Placed, b: Placed): Outcome<boolean> {
  return following(plainForm(b.shape), (form) =>
    following(edgePoints(a), (points) => points.some((p) => formDistance(form, intoFrame(b, p)) < -1e-6)),
  );
}

/** Two equal shapes on top of each other have no point of one edge inside the other: then the middle of one tells. */
function sharesMiddle(a: Placed, b: Placed): boolean {
  return [a, b].every((placed) => {
    const form = plainForm(placed.shape);
    return !isImpossible(form) && formDistance(form, intoFrame(placed, a.centre)) < -1e-6;
  });
}

import { text } from '../figure/figure.ts';
import { type Demand, finite, following, given, isImpossible, type Outcome } from '../outcome.ts';
import { contourBox } from './contour-measure.ts';
import { formDistance } from './distance.ts';
import { shapeArea, shapePerimeter } from './measure.ts';
import { type ContourForm, type PlainForm, plainForm, type RoundedBox } from './plain.ts';
import { isConvex } from './polygon.ts';
import { samples } from './samples.ts';
import { intoFrame, origin, outOfFrame, type Placed, type Point, type Shape } from './shape.ts';

/**
 * How far one shape stands out of another: `by` m at the worst place, negative where it clears the edge by that much.
 */
export interface StandsOut {
  readonly by: number;
}

const samplesRound = 512;

/**
 * How far `inner` stands out of `outer`. Exact for polygons and boxes with round corners in a shape without inside corners;
 * else at the worst of 512 or more points of its outline with every corner among them (on a curve between two points less than
 * 2e-5 of its size is missed).
 */
export function standsOut(inner: Placed, outer: Placed): Outcome<StandsOut> {
  return given([...placeDemands(inner), ...placeDemands(outer)], () =>
    following(plainForm(outer.shape), (form) =>
      following(outermost(inner, form), ({ points, round }) => {
        let by = -Infinity;
        for (const point of points)
          by = Math.max(by, formDistance(form, intoFrame(outer, outOfFrame(inner, point))) + round);
        return { by };
      }),
    ),
  );
}

/** Points of a shape in its own frame, and how far the shape reaches round each of them, m. */
interface Outermost {
  readonly points: readonly Point[];
  readonly round: number;
}

/**
 * Where a shape may stand out of another the most. The distance to a shape without inside corners is a convex function that
 * grows by d on the best way of length d: over a polygon it is largest at a corner, over a round corner at the centre of the
 * rounding, plus its radius.
 */
function outermost(inner: Placed, outer: PlainForm): Outcome<Outermost> {
  const form = plainForm(inner.shape);
  if (isImpossible(form)) return form;
  if (hasNoInsideCorner(outer)) {
    if (form.kind === 'box') return { points: cornerCentres(form), round: form.corner };
    if (isPolygon(form)) return { points: form.vertices, round: 0 };
  }
  return following(edgePoints(inner.shape), (points) => ({ points, round: 0 }));
}

const hasNoInsideCorner = (form: PlainForm): boolean =>
  form.kind !== 'contour' || (isPolygon(form) && isConvex(form.vertices));

const isPolygon = (form: PlainForm): form is ContourForm =>
  form.kind === 'contour' && form.vertices.every(({ bulge }) => bulge === undefined || bulge === 0);

function cornerCentres({ length, width, corner }: RoundedBox): readonly Point[] {
  const x = length / 2 - corner;
  const y = width / 2 - corner;
  return [
    { x, y },
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y },
  ];
}

/** Whether `inner` lies wholly inside `outer`, touching allowed; `within` (m) is what it may stand out. */
export function shapeInsideShape(inner: Placed, outer: Placed, within = 1e-6): Outcome<boolean> {
  return following(standsOut(inner, outer), ({ by }) => by <= within);
}

/** Whether two shapes share more than an edge. Exact for boxes side by side and for circles, else sampled like `standsOut`. */
export function shapesOverlap(a: Placed, b: Placed): Outcome<boolean> {
  return given([...placeDemands(a), ...placeDemands(b)], () =>
    following(plainForm(a.shape), (one) =>
      following(plainForm(b.shape), (other) => {
        const apart = Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y);
        if (apart >= reachOf(one) + reachOf(other)) return false;
        const depth =
          one.kind === 'box' && other.kind === 'box'
            ? (depthOfBox(a, one, b, other) ?? depthOfBox(b, other, a, one))
            : undefined;
        if (depth !== undefined) return depth > 1e-6;
        return following(reachesInto(a, b), (found) => found || sharesMiddle(a, b) || reachesInto(b, a));
      }),
    ),
  );
}

/** How deep the second of two boxes lies in the first, m; undefined where its sides lie askew to those of the first. */
function depthOfBox(a: Placed, one: RoundedBox, b: Placed, other: RoundedBox): number | undefined {
  const turns = isCircle(other) ? 0 : ((b.angle ?? 0) - (a.angle ?? 0)) / (Math.PI / 2);
  if (Math.abs(turns - Math.round(turns)) > 1e-9) return undefined;
  return -formDistance(swept(one, other, Math.round(turns) % 2 !== 0), intoFrame(a, b.centre));
}

/** The farthest that a shape may reach from its own origin, m. */
function reachOf(form: PlainForm): number {
  if (form.kind === 'box') {
    const { length, width, corner } = form;
    return Math.hypot(length / 2 - corner, width / 2 - corner) + corner;
  }
  if (form.kind === 'ellipse') return Math.max(form.a, form.b);
  const [low, high] = contourBox(form.vertices);
  return Math.hypot(Math.max(-low.x, high.x), Math.max(-low.y, high.y));
}

const isCircle = ({ length, width, corner }: RoundedBox): boolean => length === width && corner === length / 2;

/** All places of the other's centre at which two boxes touch or overlap: a box as large as both together. */
function swept(one: RoundedBox, other: RoundedBox, across: boolean): RoundedBox {
  return {
    kind: 'box',
    length: one.length + (across ? other.width : other.length),
    width: one.width + (across ? other.length : other.width),
    corner: one.corner + other.corner,
  };
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

function edgePoints(shape: Shape): Outcome<readonly Point[]> {
  return following(shapePerimeter(shape), (perimeter) => samples(shape, perimeter / samplesRound));
}

function reachesInto(a: Placed, b: Placed): Outcome<boolean> {
  return following(plainForm(b.shape), (form) =>
    following(edgePoints(a.shape), (points) =>
      points.some((p) => formDistance(form, intoFrame(b, outOfFrame(a, p))) < -1e-6),
    ),
  );
}

/** Two equal shapes on top of each other have no point of one edge inside the other: then the middle of one tells. */
function sharesMiddle(a: Placed, b: Placed): boolean {
  return [a, b].every((placed) => {
    const form = plainForm(placed.shape);
    return !isImpossible(form) && formDistance(form, intoFrame(placed, a.centre)) < -1e-6;
  });
}

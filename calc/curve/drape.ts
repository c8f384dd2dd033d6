import { finite, given, notNegative, type Outcome, positive } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import { flattened } from '../outline/flatten.ts';
import type { Point } from '../outline/shape.ts';
import { apply, turned } from '../outline/transform.ts';

/** Area (m2) inside the line that runs this far (m) inside an outline. */
type AreaInside = (inset: number) => Outcome;

/** Nodes and weights of Gauss and Legendre on [0, 1], 8 points (Abramowitz and Stegun 1964, table 25.4). */
const nodes = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const weights = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];
const gauss = nodes.flatMap((x, i) => [
  { at: (1 - x) / 2, weight: weights[i]! / 2 },
  { at: (1 + x) / 2, weight: weights[i]! / 2 },
]);

/**
 * The distance to the edge added up over an outline, m3: times a Gaussian curvature (1/m2) the length that the edge of a flat piece
 * has too much once it lies on such a face, and too little on a saddle. The angle K dA that cannot be laid flat (Gauss and
 * Bonnet) costs K dA times the distance to the edge. For a circle that is pi K r3 / 3, the formula of J. Bertrand, C. F. Diguet
 * and V. Puiseux (Journal de mathematiques 13, 1848). First order in K: 1.3 % too much on a cap of one radian across.
 * `widest` (m) is the radius of the widest circle inside, or more.
 */
export function edgeMoment(areaInside: AreaInside, widest: number): Outcome {
  return given([positive('the width of the outline', widest)], () => {
    let sum = 0;
    // the distances add up to the areas inside the lines at each distance
    for (const { at, weight } of gauss) {
      const area = areaInside(at * widest);
      if (typeof area !== 'number') return area;
      sum += weight * area;
    }
    return widest * sum;
  });
}

/** More vertices than this are thinned out where the excess at the edge is reckoned, by this at most (m). */
const manyVertices = 200;
const thinnedBy = 0.3e-3;
const mostBetween = 100;

/** A long outline with the vertices that matter for its area: none that is left out lies more than 0.6 mm off it. */
export function thinned(contour: Contour): Contour {
  if (contour.length <= manyVertices) return contour;
  const points = flattened(contour, thinnedBy);
  const kept: Point[] = [];
  let last = 0;
  for (let i = 1; i <= points.length; i++) {
    const [from, to] = [points[last]!, points[i % points.length]!];
    const between = points.slice(last + 1, i);
    if (between.length < mostBetween && between.every((p) => offChord(from, to, p) <= thinnedBy)) continue;
    kept.push(from);
    last = i - 1;
  }
  return [...kept, points[last]!];
}

function offChord(from: Point, to: Point, p: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  return length === 0
    ? Math.hypot(p.x - from.x, p.y - from.y)
    : Math.abs((p.x - from.x) * dy - (p.y - from.y) * dx) / length;
}

/** Half of the shorter side of the box round an outline, m: no circle inside is wider. */
export function halfWidth(contour: Contour): number {
  const [low, high] = contourBox(contour);
  return Math.min(high.x - low.x, high.y - low.y) / 2;
}

/**
 * The largest angle (rad) by which the two fibres of a cloth leave the square when it is laid over an outline on a surface of
 * Gaussian curvature `curvature`, from two crossing fibres through the middle outwards, without a fold: the curvature times
 * the area between those fibres and the corner, K u v (P. Chebyshev 1878, "Sur la coupe des vetements"; the sum of the
 * angles of a net: J. Hazzidakis 1879). `fibre` is the direction of one of the two, rad from x.
 */
export function shearAngle(curvature: number, contour: Contour, fibre: number): Outcome {
  return given([finite('the curvature', curvature), finite('the direction of the fibre', fibre)], () => {
    if (curvature === 0) return 0;
    const turn = turned(-fibre);
    const points = flattened(contour, 1e-4).map((p) => apply(turn, p));
    const most = points.map((from, i) => furthestOff(from, points[(i + 1) % points.length] ?? from));
    return Math.abs(curvature) * most.reduce((a, b) => Math.max(a, b), 0);
  });
}

/** The largest |x y| on a straight: at its beginning, or on the way where x y turns back. */
function furthestOff(from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const share = dx * dy === 0 ? 0 : -(from.x * dy + from.y * dx) / (2 * dx * dy);
  const within = share > 0 && share < 1 ? share : 0;
  return Math.max(Math.abs(from.x * from.y), Math.abs((from.x + within * dx) * (from.y + within * dy)));
}

/** Excess (m) that is left where the cloth takes a shear of no more than `locks` (rad) of the `shear` (rad) that is needed. */
export function leftOver(excess: number, shear: number, locks: number): Outcome {
  return given(
    [finite('the excess', excess), notNegative('the shear', shear), notNegative('the limit of the shear', locks)],
    () => (shear <= locks ? 0 : excess * (1 - locks / shear)),
  );
}

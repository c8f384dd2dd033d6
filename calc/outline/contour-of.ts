import { onceFor } from '../kept.ts';
import { following, type Outcome } from '../outcome.ts';
import { bulgeOf } from './arc.ts';
import type { Contour, Vertex } from './contour.ts';
import { arcsAlong, ellipseCurve } from './curve.ts';
import { type EllipseForm, type PlainForm, plainForm, type RoundedBox } from './plain.ts';
import { origin, type Shape } from './shape.ts';

const quarter = bulgeOf(Math.PI / 2);
const half = bulgeOf(Math.PI);

/**
 * Any outline as a counter-clockwise line of straights and arcs about its own origin; exact for all but the ellipse, whose arcs
 * leave it by no more than 2 um. The same object for the same shape.
 */
export function contourOf(shape: Shape): Outcome<Contour> {
  return following(plainForm(shape), formContour);
}

const formContour = onceFor((form: PlainForm): Contour => {
  if (form.kind === 'contour') return form.vertices;
  return form.kind === 'box' ? boxContour(form) : ellipseContour(form);
});

function boxContour({ length, width, corner }: RoundedBox): Contour {
  const [x, y] = [length / 2, width / 2];
  // What is left of a side between two corners; less than this is rounding.
  const least = 1e-9 * Math.max(length, width);
  const along = x - corner > least ? x - corner : 0;
  const across = y - corner > least ? y - corner : 0;
  if (corner <= least) return rectangle(x, y);
  if (along === 0 && across === 0) return [bent(x, 0, half), bent(-x, 0, half)];
  if (across === 0) return [bent(along, -y, half), { x: along, y }, bent(-along, y, half), { x: -along, y: -y }];
  if (along === 0) return [{ x, y: -across }, bent(x, across, half), { x: -x, y: across }, bent(-x, -across, half)];
  return [
    { x, y: -across },
    bent(x, across, quarter),
    { x: along, y },
    bent(-along, y, quarter),
    { x: -x, y: across },
    bent(-x, -across, quarter),
    { x: -along, y: -y },
    bent(along, -y, quarter),
  ];
}

const bent = (x: number, y: number, bulge: number): Vertex => ({ x, y, bulge });

const rectangle = (x: number, y: number): Contour => [
  { x, y: -y },
  { x, y },
  { x: -x, y },
  { x: -x, y: -y },
];

/** Vertices on both axes: the outline keeps its length and width. */
function ellipseContour({ a, b }: EllipseForm): Contour {
  const curve = ellipseCurve(origin, { x: a, y: 0 }, { x: 0, y: b });
  return [0, 1, 2, 3].flatMap((i) => arcsAlong(curve, (i * Math.PI) / 2, ((i + 1) * Math.PI) / 2));
}

import { following, type Outcome } from '../outcome.ts';
import { arcBetweenNormals, pointByNormal } from './ellipse.ts';
import { type EllipseForm, type PlainForm, type PolygonForm, plainForm, type RoundedBox } from './plain.ts';
import { distanceBetween, turnAt } from './polygon.ts';
import type { Point, Shape } from './shape.ts';

/**
 * One stretch of an outline, walked counter-clockwise. `turn` (rad) is positive where the outline bulges outwards,
 * negative at an inside corner; the turns of a whole outline add up to 2 pi. A corner has a turn and no length, a
 * straight no turn and no radius. The arcs of an ellipse have their mean radius.
 */
export interface Stretch {
  readonly kind: 'straight' | 'arc' | 'corner';
  /** m */
  readonly length: number;
  /** rad */
  readonly turn: number;
  /** m, of an arc */
  readonly radius?: number;
  readonly from: Point;
  readonly to: Point;
}

/** The stretches of an outline in order; an ellipse comes in 24 arcs of equal turn. */
export function turns(shape: Shape): Outcome<readonly Stretch[]> {
  return following(plainForm(shape), formTurns);
}

function formTurns(form: PlainForm): Stretch[] {
  switch (form.kind) {
    case 'box':
      return boxTurns(form);
    case 'ellipse':
      return ellipseTurns(form);
    case 'polygon':
      return polygonTurns(form);
  }
}

const quarter = Math.PI / 2;

function boxTurns({ length, width, corner }: RoundedBox): Stretch[] {
  const along = length / 2 - corner;
  const across = width / 2 - corner;
  const centres = [
    { x: along, y: across },
    { x: -along, y: across },
    { x: -along, y: -across },
    { x: along, y: -across },
  ];
  const stretches: Stretch[] = [];
  let from: Point = { x: length / 2, y: -across };
  centres.forEach((centre, i) => {
    const start = { x: centre.x + corner * Math.cos(i * quarter), y: centre.y + corner * Math.sin(i * quarter) };
    const end = {
      x: centre.x + corner * Math.cos((i + 1) * quarter),
      y: centre.y + corner * Math.sin((i + 1) * quarter),
    };
    const run = i % 2 === 0 ? 2 * across : 2 * along;
    if (run > length * 1e-12) stretches.push({ kind: 'straight', length: run, turn: 0, from, to: start });
    if (corner === 0) stretches.push({ kind: 'corner', length: 0, turn: quarter, from: start, to: start });
    else stretches.push({ kind: 'arc', length: corner * quarter, turn: quarter, radius: corner, from: start, to: end });
    from = end;
  });
  return joined(stretches);
}

/** Arcs that follow each other without a straight between them are one; the first may go on from the last. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const next of stretches) {
    const last = out.at(-1);
    if (last?.kind === 'arc' && next.kind === 'arc') out[out.length - 1] = together(last, next);
    else out.push(next);
  }
  const first = out[0];
  const last = out.at(-1);
  if (out.length > 1 && first?.kind === 'arc' && last?.kind === 'arc')
    return [together(last, first), ...out.slice(1, -1)];
  return out;
}

function together(a: Stretch, b: Stretch): Stretch {
  return { ...a, length: a.length + b.length, turn: a.turn + b.turn, to: b.to };
}

const arcsOfEllipse = 24;

function ellipseTurns(form: EllipseForm): Stretch[] {
  const turn = (2 * Math.PI) / arcsOfEllipse;
  return Array.from({ length: arcsOfEllipse }, (_, i) => {
    const length = arcBetweenNormals(form, i * turn, (i + 1) * turn);
    const [from, to] = [pointByNormal(form, i * turn), pointByNormal(form, (i + 1) * turn)];
    return { kind: 'arc', length, turn, radius: length / turn, from, to };
  });
}

function polygonTurns({ points }: PolygonForm): Stretch[] {
  const n = points.length;
  return points.flatMap((from, i): Stretch[] => {
    const to = points[(i + 1) % n]!;
    const turn = turnAt(from, to, points[(i + 2) % n]!);
    return [
      { kind: 'straight', length: distanceBetween(from, to), turn: 0, from, to },
      { kind: 'corner', length: 0, turn, from: to, to },
    ];
  });
}

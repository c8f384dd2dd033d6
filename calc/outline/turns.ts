import { following, type Outcome } from '../outcome.ts';
import { segmentLength, segmentsOf } from './arc.ts';
import { arcBetweenNormals, pointByNormal } from './ellipse.ts';
import { type ContourForm, type EllipseForm, type PlainForm, plainForm, type RoundedBox } from './plain.ts';
import { turnsOf } from './segment-lists.ts';
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
    case 'contour':
      return contourTurns(form);
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
    if (last !== undefined && sameCircle(last, next)) out[out.length - 1] = together(last, next);
    else out.push(next);
  }
  const first = out[0];
  const last = out.at(-1);
  if (out.length > 1 && first !== undefined && last !== undefined && sameCircle(first, last))
    return [together(last, first), ...out.slice(1, -1)];
  return out;
}

/** Two arcs that run into each other with the same radius to the same side. */
function sameCircle(a: Stretch, b: Stretch): boolean {
  if (a.radius === undefined || b.radius === undefined || a.turn > 0 !== b.turn > 0) return false;
  return Math.abs(a.radius - b.radius) <= 1e-9 * a.radius;
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

/** Arcs on the same circle are one; a corner is told where two segments do not run into each other. */
function contourTurns({ vertices }: ContourForm): Stretch[] {
  const corners = turnsOf(vertices);
  const stretches = segmentsOf(vertices).flatMap((s, i): Stretch[] => {
    const turn = corners[i]!;
    const { from, to, arc } = s;
    const length = segmentLength(s);
    const run: Stretch =
      arc === undefined
        ? { kind: 'straight', length, turn: 0, from, to }
        : { kind: 'arc', length, turn: arc.sweep, radius: arc.radius, from, to };
    return Math.abs(turn) <= 1e-9 ? [run] : [run, { kind: 'corner', length: 0, turn, from: to, to }];
  });
  return joined(stretches);
}

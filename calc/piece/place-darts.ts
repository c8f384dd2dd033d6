import type { BendNeed } from '../cloth/darts.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';
import { type EdgeStretch, footInBend } from './edge-turns.ts';
import type { Dart } from './flat-piece.ts';
import { onceRound, placeNear, pointAt, type Rim, rimOf } from './rim.ts';
import { type Blocked, spread } from './spread.ts';

export interface DartShape {
  /** how far past the outline the free edge lies while flat, m */
  readonly reach: number;
  /** how far short of the face a dart ends, m */
  readonly keepOff: number;
  /** cloth that stays between two darts at the free edge, m */
  readonly gap: number;
  /** a dart narrower than this is a slit that laps, m */
  readonly narrowest: number;
}

/** Where along a bend its darts begin: at the shares (k + phase) / count of its turn. Between 0 and 1; 0.5 is even all round. */
export type Phase = (bend: number) => number;

export const EVEN: Phase = () => 0.5;

/** What darts give way to; nothing where it is not given. */
export interface GiveWay {
  readonly phase?: Phase;
  /** stretches of the rim that stay whole */
  readonly blocked?: readonly Blocked[];
  /** darts of the plies next to this one: its own close `gap` beside theirs */
  readonly others?: readonly Dart[];
}

/**
 * The darts and slits of a wrapped ply: over each bend in equal parts of its turn, so that they stand closer where it turns
 * more; at a sharp corner, where the whole turn is in one point, as close as their width lets them. Each runs from the free
 * edge straight towards the nearest point of the outline and ends `keepOff` before it.
 * @param rim the contour of the flat piece
 */
export function placeDarts(
  outline: Contour,
  rim: Contour,
  stretches: readonly EdgeStretch[],
  bends: readonly BendNeed[],
  shape: DartShape,
  { phase = EVEN, blocked = [], others = [] }: GiveWay = {},
): readonly Dart[] {
  const [edge, face] = [rimOf(rim), rimOf(outline)];
  const wanted = bends.flatMap((bend, b) => {
    const count = bend.darts + bend.slits;
    return Array.from({ length: count }, (_, k) => ({
      bend,
      place: wantedAt(edge, stretches, bend, k, phase(b), shape),
    }));
  });
  const seams = others.map((other) => placeNear(edge, mouthOf(other, shape)).place);
  const cuts = wanted.map(({ bend, place }) => ({
    place: isCorner(bend, shape) ? place : beside(place, seams, shape.gap, edge.length),
    width: isOpen(bend, shape) ? bend.width : 0,
  }));
  return spread(cuts, edge.length, shape.gap, blocked).map(({ of, place, width }) => {
    const { bend } = wanted[of]!;
    return cut(edge, face, place, width, bend, shape);
  });
}

/** The place itself, or the nearest one that lies `gap` beside a seam that it would fall on. */
function beside(place: number, seams: readonly number[], gap: number, length: number): number {
  const off = (at: number, seam: number) => onceRound(at - seam + length / 2, length) - length / 2;
  const clear = (at: number) => seams.every((seam) => Math.abs(off(at, seam)) >= gap - 1e-9);
  if (clear(place)) return place;
  const tries = seams.flatMap((seam) => [seam + gap, seam - gap]).filter(clear);
  let best: number | undefined;
  for (const at of tries)
    if (best === undefined || Math.abs(off(at, place)) < Math.abs(off(best, place)) - 1e-12) best = at;
  return best === undefined || Math.abs(off(best, place)) > 2 * gap ? place : onceRound(best, length);
}

/** The dart of a sharp corner has but one place: it takes out the corner. */
export const isCorner = (
  { darts, slits, width, length, turn }: BendNeed,
  { reach }: Pick<DartShape, 'reach'>,
): boolean => darts + slits === 1 && 2 * width > length + reach * turn;

/** Where the mouth of another ply's dart would be if that ply reached as far as this one. */
export function mouthOf({ mouth, tip, depth }: Dart, { reach, keepOff }: DartShape): Point {
  return towards(tip, mouth, depth > 0 ? (reach - keepOff) / depth : 0);
}

/** Whether cloth is taken out: not on a bend inwards, nor where a V would be too narrow to cut. */
const isOpen = ({ turn, width }: BendNeed, { narrowest }: DartShape) => turn > 0 && width >= narrowest;

function wantedAt(
  edge: Rim,
  stretches: readonly EdgeStretch[],
  bend: BendNeed,
  k: number,
  phase: number,
  { reach }: DartShape,
): number {
  const foot = footInBend(stretches, bend, (k + phase) / (bend.darts + bend.slits));
  if (foot === undefined) return 0;
  const { at, outward } = foot;
  return placeNear(edge, { x: at.x + reach * Math.cos(outward), y: at.y + reach * Math.sin(outward) }).place;
}

function cut(edge: Rim, face: Rim, place: number, width: number, bend: BendNeed, { keepOff }: DartShape): Dart {
  const mouth = pointAt(edge, place);
  const { place: under, distance } = placeNear(face, mouth);
  const tip = towards(pointAt(face, under), mouth, distance > 0 ? Math.min(1, keepOff / distance) : 0);
  const depth = Math.max(0, distance - keepOff);
  if (width > 0) return { kind: 'dart', mouth, tip, width, depth };
  const by = bend.turn > 0 ? { lap: bend.width } : { opens: bend.width };
  return { kind: 'slit', mouth, tip, width: 0, depth, ...by };
}

const towards = (from: Point, to: Point, share: number): Point => ({
  x: from.x + share * (to.x - from.x),
  y: from.y + share * (to.y - from.y),
});

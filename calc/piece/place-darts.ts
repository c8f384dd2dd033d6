import type { BendNeed } from '../cloth/darts.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';
import { type EdgeStretch, footInBend } from './edge-turns.ts';
import type { Dart } from './flat-piece.ts';
import { onceRound, placeNear, pointAt, type Rim, rimOf } from './rim.ts';
import { type Blocked, type Found, spread } from './spread.ts';

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

/** A cut as its bend wants it. */
interface WantedCut {
  readonly bend: BendNeed;
  /** on the rim, m */
  readonly place: number;
  /** what it takes out of the rim, m */
  readonly width: number;
  /** the place of the bend that it belongs to, where the rim runs nearer to it than it reaches elsewhere */
  readonly inner?: Point | undefined;
  /** where the bend begins and ends on the rim, m */
  readonly from: number;
  readonly to: number;
}

/**
 * The darts and slits of a wrapped ply: over each bend in equal parts of its turn, so that they stand closer where it turns
 * more; at a sharp corner, where the whole turn is in one point, as close as their width lets them. Each runs from the free
 * edge straight towards the nearest point of the outline, at an inside corner into that corner, and ends `keepOff` before it. The dart
 * of a sharp corner takes its place even where a stretch should stay whole: it has no other.
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
  const wanted = bends.flatMap((bend, b) => wantedCuts(edge, stretches, bend, phase(b), shape));
  const corners = wanted.filter(({ bend }) => isCorner(bend, shape));
  const atCorners = spread(corners, edge.length, shape.gap, []);
  const walls = [
    ...atCorners.map(({ place, width }) => ({ place, by: Math.max(width / 2, onRim) })),
    ...blocked
      .map(({ from, to }) => ({ place: (from + to) / 2, by: (to - from) / 2 }))
      .filter(clearOf(edge, atCorners)),
  ];
  const seams = others.map((other) => ({ place: placeNear(edge, mouthOf(other, shape)).place, by: shape.gap }));
  const along = wanted
    .filter(({ bend }) => !isCorner(bend, shape))
    .map((cut): WantedCut => {
      const beyond = walls.map(({ place, by }) => ({ place, by: by + shape.gap + cut.width / 2 }));
      const place = beside(edge, cut, [...seams, ...beyond], 3 * shape.gap + cut.width);
      return place === cut.place ? cut : { ...cut, place, inner: undefined };
    });
  const whole = walls.map(({ place, by }) => ({ from: place - by, to: place + by }));
  const cuts = (of: readonly WantedCut[], found: readonly Found[]) =>
    found.map((one) => cutAt(edge, face, { ...of[one.of]!, width: one.width }, one.place, shape));
  return [...cuts(corners, atCorners), ...cuts(along, spread(along, edge.length, shape.gap, whole))];
}

const clearOf =
  (edge: Rim, cuts: readonly Found[]) =>
  ({ place, by }: { readonly place: number; readonly by: number }): boolean =>
    cuts.every((cut) => Math.abs(off(edge, cut.place, place)) >= cut.width / 2 + by);

/** How far one place is onwards from another, the short way round; m. */
const off = ({ length }: Rim, at: number, from: number) => onceRound(at - from + length / 2, length) - length / 2;

/** The place itself, or the nearest one on the same bend, no further than `most`, that lies clear of all that is taken. */
function beside(
  edge: Rim,
  { place, from, to }: WantedCut,
  taken: readonly { readonly place: number; readonly by: number }[],
  most: number,
): number {
  const bend = onceRound(to - from, edge.length);
  const onBend = (at: number) => bend < onRim || onceRound(at - from, edge.length) <= bend + onRim;
  const clear = (at: number) => taken.every((one) => Math.abs(off(edge, at, one.place)) >= one.by - 1e-9);
  if (clear(place)) return place;
  const tries = taken
    .flatMap((one) => [one.place + one.by, one.place - one.by])
    .filter((at) => onBend(at) && clear(at));
  let best: number | undefined;
  for (const at of tries)
    if (best === undefined || Math.abs(off(edge, at, place)) < Math.abs(off(edge, best, place)) - 1e-12) best = at;
  return best === undefined || Math.abs(off(edge, best, place)) > most ? place : onceRound(best, edge.length);
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

function wantedCuts(
  edge: Rim,
  stretches: readonly EdgeStretch[],
  bend: BendNeed,
  phase: number,
  shape: DartShape,
): readonly WantedCut[] {
  const count = bend.darts + bend.slits;
  if (count === 0) return [];
  const width = isOpen(bend, shape) ? bend.width : 0;
  const above = (share: number) => {
    const foot = footInBend(stretches, bend, share);
    if (foot === undefined) return { place: 0 };
    const { at, outward } = foot;
    const out = { x: at.x + shape.reach * Math.cos(outward), y: at.y + shape.reach * Math.sin(outward) };
    const { place, distance } = placeNear(edge, out);
    return bend.turn < 0 && distance > onRim ? { place, inner: at } : { place };
  };
  const [from, to] = [above(0).place, above(1).place];
  return Array.from({ length: count }, (_, k) => ({ bend, width, from, to, ...above((k + phase) / count) }));
}

/** A place above the outline that is further from the rim than this was trimmed off it, m. */
const onRim = 1e-6;

function cutAt(edge: Rim, face: Rim, wanted: WantedCut, place: number, { keepOff }: DartShape): Dart {
  const { bend, width, inner } = wanted;
  const mouth = pointAt(edge, place);
  const into = inner !== undefined && Math.abs(off(edge, place, wanted.place)) < onRim ? inner : undefined;
  const tip = into === undefined ? beforeNearest(face, mouth, keepOff) : beforeCorner(face, mouth, into, keepOff);
  const depth = Math.hypot(mouth.x - tip.x, mouth.y - tip.y);
  if (width > 0) return { kind: 'dart', mouth, tip, width, depth };
  const by = bend.turn > 0 ? { lap: bend.width } : { opens: bend.width };
  return { kind: 'slit', mouth, tip, width: 0, depth, ...by };
}

function beforeNearest(face: Rim, mouth: Point, keepOff: number): Point {
  const { place, distance } = placeNear(face, mouth);
  return towards(pointAt(face, place), mouth, distance > 0 ? Math.min(1, keepOff / distance) : 0);
}

/** On the way from an inside corner to the mouth, where both its sides are `keepOff` away. */
function beforeCorner(face: Rim, mouth: Point, corner: Point, keepOff: number): Point {
  const way = Math.hypot(mouth.x - corner.x, mouth.y - corner.y);
  let along = Math.min(way, keepOff);
  for (let i = 0; i < 8 && along < way; i++) {
    const { distance } = placeNear(face, towards(corner, mouth, along / way));
    if (distance >= keepOff - 1e-9 || distance === 0) break;
    along = Math.min(way, (along * keepOff) / distance);
  }
  return towards(corner, mouth, way > 0 ? along / way : 0);
}

const towards = (from: Point, to: Point, share: number): Point => ({
  x: from.x + share * (to.x - from.x),
  y: from.y + share * (to.y - from.y),
});

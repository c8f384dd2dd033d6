import type { BendNeed } from '../cloth/darts.ts';
import type { Contour } from '../outline/contour.ts';
import type { Point } from '../outline/shape.ts';
import { type EdgeStretch, footInBend } from './edge-turns.ts';
import type { Dart } from './flat-piece.ts';
import { onceRound, placeNear, pointAt, type Rim, rimOf, shortWay } from './rim.ts';
import { seamsApart } from './seams.ts';
import { type CutWanted, type Seam, settleCuts } from './settle-cuts.ts';
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
  const curved = wanted.filter(({ bend }) => !isCorner(bend, shape));
  const seams = seamsOn(edge, face, others, shape);
  const settled = settleCuts(leewaysOf(edge, curved, shape), { length: edge.length, gap: shape.gap, seams, walls });
  const along = curved.map((cut, i): WantedCut => {
    const place = settled[i]!;
    return place === cut.place ? cut : { ...cut, place, inner: undefined };
  });
  const whole = walls.map(({ place, by }) => ({ from: place - by, to: place + by }));
  const cuts = (of: readonly WantedCut[], found: readonly Found[]) =>
    found.map((one) => cutAt(edge, face, { ...of[one.of]!, width: one.width }, one.place, shape));
  const sharp = cuts(corners, atCorners).map((dart): Dart => ({ ...dart, corner: true }));
  return [...sharp, ...cuts(along, spread(along, edge.length, shape.gap, whole))];
}

const clearOf =
  (edge: Rim, cuts: readonly Found[]) =>
  ({ place, by }: { readonly place: number; readonly by: number }): boolean =>
    cuts.every((cut) => Math.abs(off(edge, cut.place, place)) >= cut.width / 2 + by);

/** How far one place is onwards from another, the short way round; m. */
const off = ({ length }: Rim, at: number, from: number) => shortWay(at - from, length);

/**
 * How far each cut may move: as far as to the next of its bend and past a seam there, and not out of the run of bends the same way
 * that adjoin each other; at need so far past its end that its own edge is still there. Where the run is one point of the rim, as
 * deep inside a corner, or goes all round, it has no ends.
 */
function leewaysOf(edge: Rim, cuts: readonly WantedCut[], { gap }: DartShape): readonly CutWanted[] {
  const bends = [...new Map(cuts.map((cut) => [cut.bend, cut])).values()];
  const adjoin = (a: WantedCut, b: WantedCut) =>
    a.bend.turn * b.bend.turn > 0 && Math.abs(off(edge, b.from, a.to)) < gap;
  const room = new Map(
    bends.map((bend, i) => {
      const beyond = (way: 1 | -1): number => {
        let far = 0;
        for (let k = 1; k < bends.length && far < edge.length; k++) {
          const [at, next] = [k - 1, k].map((step) => bends[(i + way * step + k * bends.length) % bends.length]!);
          if (!(way > 0 ? adjoin(at!, next!) : adjoin(next!, at!))) break;
          far += onceRound(next!.to - next!.from, edge.length);
        }
        return far;
      };
      return [bend.bend, { back: beyond(-1), on: beyond(1) }];
    }),
  );
  return cuts.map(({ place, from, to, width, bend }) => {
    const length = onceRound(to - from, edge.length);
    const next = (length > onRim ? length : edge.length) / (bend.darts + bend.slits);
    const most = Math.max(3 * gap + width, next) + 2 * gap;
    const [back, on] = [onceRound(place - from, edge.length), onceRound(to - place, edge.length)];
    if (length <= onRim || back + on > length + onRim) return { place, width, back: most, on: most, past: 0 };
    const more = room.get(bend)!;
    return { place, width, back: Math.min(most, back + more.back), on: Math.min(most, on + more.on), past: width / 2 };
  });
}

/**
 * The seams of other plies on this rim, and how far off each the middle of a cut must lie so that the seams, at the free edge of
 * the ply that reaches further, are a `gap` apart: over an inside corner they come together on their way out.
 */
function seamsOn(edge: Rim, face: Rim, others: readonly Dart[], shape: DartShape): readonly Seam[] {
  return others
    .filter(({ corner }) => corner !== true)
    .map((other) => {
      const { place } = placeNear(edge, mouthOf(other, shape));
      const half = Math.max(other.width, other.lap ?? 0) / 2;
      const off = (way: number) => {
        const mouth = pointAt(edge, place + way * shape.gap);
        const apart = seamsApart(lineOf(mouth, beforeNearest(face, mouth, shape.keepOff)), other);
        return shape.gap * Math.min(most, Math.max(least, shape.gap / apart));
      };
      return { place, half, before: off(-1), behind: off(1) };
    });
}

/** Between these two a seam may keep others off, as shares of the gap: beyond them rims are too odd to be measured so. */
const [least, most] = [0.5, 3];

const lineOf = (mouth: Point, tip: Point) => ({ mouth, tip, depth: Math.hypot(mouth.x - tip.x, mouth.y - tip.y) });

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

import { lanesFor } from '../cloth/lanes.ts';
import { text } from '../figure/figure.ts';
import { keptWith } from '../kept.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import { transformed, turned } from '../outline/transform.ts';
import { clippedByAll, type HalfPlane } from './half-plane.ts';

/** How far a piece reaches across its roll: places along the normal of the warp, m from the origin. */
export interface Across {
  readonly low: number;
  readonly high: number;
}

/** A line that joins had better stay away from, parallel to the roll: m across, and how far. */
export interface KeepClear {
  readonly at: number;
  readonly by: number;
}

/** @param grain the way of the roll, rad from x */
export const acrossRoll = (contour: Contour, grain: number): Across =>
  spans(contour, String(grain), () => {
    const [low, high] = contourBox(grain === 0 ? contour : transformed(contour, turned(-grain)));
    return { low: low.y, high: high.y };
  });

const spans = keptWith<Contour, Across>();

/** More lanes than any piece has; a slip of the key must not hold up the editor. */
const mostLanes = 200;

/** Tried for the best place of joins, over the play that the roll leaves. */
const tries = 40;

/**
 * Where the overlaps of lanes have their middle, m across the roll, from low to high. Typed joins stay where they are; what is
 * still wider than the roll is parted in lanes of nearly equal width, moved within the play of the roll so that joins stay
 * clear of darts and of the joins of the ply below as well as can be.
 */
export function joinsAcross(
  span: Across,
  roll: number,
  lap: number,
  typed: readonly number[] = [],
  clear: readonly KeepClear[] = [],
): Outcome<readonly number[]> {
  const fixed = typed.filter((at) => at > span.low && at < span.high).sort((a, b) => a - b);
  const joins: number[] = [...fixed];
  for (let i = 0; i <= fixed.length; i++) {
    const [before, after] = [fixed[i - 1], fixed[i]];
    const low = before === undefined ? span.low : before - lap / 2;
    const high = after === undefined ? span.high : after + lap / 2;
    const found = following(lanesFor(high - low, roll, lap), ({ lanes }) =>
      lanes > mostLanes
        ? { problem: text('the piece would be joined of more than {most} lanes', { most: mostLanes }) }
        : parted(low, high, lanes, roll, lap, clear),
    );
    if (isImpossible(found)) return found;
    joins.push(...found);
  }
  return joins.sort((a, b) => a - b);
}

/** The joins of so many lanes that cover what lies from `low` to `high`. */
function parted(
  low: number,
  high: number,
  lanes: number,
  roll: number,
  lap: number,
  clear: readonly KeepClear[],
): readonly number[] {
  if (lanes < 2) return [];
  const play = lanes * roll - (lanes - 1) * lap - (high - low);
  let best: { readonly joins: readonly number[]; readonly room: number } | undefined;
  for (let i = 0; i <= tries; i++) {
    // from the middle of the play outwards, to either side in turn
    const moved = play * (0.5 + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2)) / tries);
    const joins = Array.from({ length: lanes - 1 }, (_, k) => low - moved + (k + 1) * (roll - lap) + lap / 2);
    const room = Math.min(0, ...joins.flatMap((join) => clear.map(({ at, by }) => Math.abs(join - at) - by)));
    if (best === undefined || room > best.room + 1e-9) best = { joins, room };
  }
  return best?.joins ?? [];
}

/** The lanes of a piece, from low to high across the roll: each with half the overlap on either side of its joins. */
export function lanesOf(
  contour: Contour,
  grain: number,
  joins: readonly number[],
  lap: number,
): readonly (readonly Contour[])[] {
  const normal = { x: -Math.sin(grain), y: Math.cos(grain) };
  const back = { x: -normal.x, y: -normal.y };
  return Array.from({ length: joins.length + 1 }, (_, i) => {
    const halves: HalfPlane[] = [];
    if (i > 0) halves.push({ normal, from: joins[i - 1]! - lap / 2 });
    if (i < joins.length) halves.push({ normal: back, from: -(joins[i]! + lap / 2) });
    return clippedByAll(contour, halves);
  });
}

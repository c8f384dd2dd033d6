import { count, given, notNegative, type Outcome, positive, share } from '../outcome.ts';
import type { Bend, Overhang } from './excess.ts';
import { oncePlace, tightPlaces } from './tight.ts';
import { trendOf } from './trend.ts';

export interface DartHabit {
  /** share of the excess that the cloth takes up by shear, 0 to 1 */
  readonly shear: number;
  /** the widest dart or slit opening that is cut, m */
  readonly widest: number;
  /** how far short of the face's edge a dart ends, m; a dart never runs into the face */
  readonly keepOff: number;
  /** excess after shear that lies flat by itself, m: less than that needs no cut; 0 where absent */
  readonly least?: number;
  /** cloth that stays between two darts at the free edge at least, m; 0 where absent */
  readonly tongue?: number;
}

/**
 * What one bend of the outline asks of a wrapped ply; metres. Stretches `first` to `last` belong to it, in walking
 * order.
 */
export interface BendNeed {
  readonly first: number;
  readonly last: number;
  readonly turn: number;
  /** of the outline from its first stretch to its last; 0 at a sharp corner */
  readonly length: number;
  /** length too much at the free edge; negative where it is too short */
  readonly excess: number;
  /** part of the excess that darts or slits must deal with, without sign */
  readonly left: number;
  /** where the excess is positive */
  readonly darts: number;
  /** relief slits, where it is negative */
  readonly slits: number;
  /** of each dart at the free edge, or what each slit opens by */
  readonly width: number;
  /** the widest that one may be here: more than usual where there is no room for more of them */
  readonly widest: number;
  /** from the free edge inwards */
  readonly depth: number;
}

/**
 * What each bend needs: the excess turn (reach + landing), less what shear takes up, in equal darts no wider than the
 * widest; on inward bends as many relief slits. Where so many would leave nothing but threads between them, fewer and wider
 * ones: at a sharp corner, a turn at one point, it is one dart or one slit. Stretches that bend the same way are one bend unless a straight longer
 * than reach + landing parts them: over a shorter one the excess cannot lie flat.
 */
export function dartNeeds(
  stretches: readonly Bend[],
  overhang: Overhang,
  habit: DartHabit,
): Outcome<readonly BendNeed[]> {
  const { reach, landing } = overhang;
  return given(
    [
      positive('the reach', reach),
      notNegative('the landing', landing),
      share('the share taken up by shear', habit.shear),
      positive('the widest dart', habit.widest),
      notNegative('the distance kept from the face', habit.keepOff),
      notNegative('the excess that lies flat', habit.least ?? 0),
      habit.keepOff < reach ? undefined : 'the reach is no longer than the distance that darts keep from the face',
    ],
    () => {
      const least = (habit.least ?? 0) / ((reach + landing) * (1 - habit.shear));
      const loss = (reach + landing) * (1 - habit.shear);
      const tight = (habit.tongue ?? 0) > 0 ? tightPlaces(stretches, { reach, loss, most: habit.widest }) : [];
      return bends(stretches, reach + landing, least, tight).map((bend) => need(bend, overhang, habit));
    },
  );
}

/** Darts that a whole piece needs, all bends together; slits likewise. */
export function dartTotal(needs: readonly BendNeed[]): { readonly darts: number; readonly slits: number } {
  return {
    darts: needs.reduce((sum, n) => sum + n.darts, 0),
    slits: needs.reduce((sum, n) => sum + n.slits, 0),
  };
}

/**
 * A typed number of darts shared over the outward bends by their turn (largest remainders first), with the width that
 * each then has; a width of the whole rest and no dart where a bend gets none.
 */
export function shareDarts(needs: readonly BendNeed[], total: number): Outcome<readonly BendNeed[]> {
  return given([count('the number of darts', total, 0)], () => {
    const turn = needs.reduce((sum, n) => sum + Math.max(0, n.turn), 0);
    const ideal = needs.map((n) => (turn > 0 ? (total * Math.max(0, n.turn)) / turn : 0));
    const shares = ideal.map((x) => Math.floor(x + 1e-9));
    let over = turn > 0 ? total - shares.reduce((sum, n) => sum + n, 0) : 0;
    const byRemainder = ideal.map((x, i) => ({ i, rest: x - shares[i]! })).sort((a, b) => b.rest - a.rest || a.i - b.i);
    for (const { i } of byRemainder) if (over > 0 && needs[i]!.turn > 0 && over--) shares[i]!++;
    return needs.map((n, i) =>
      n.excess > 0 ? { ...n, darts: shares[i]!, width: n.left / Math.max(1, shares[i]!) } : n,
    );
  });
}

interface Run {
  first: number;
  last: number;
  turn: number;
  length: number;
  /** 1 where the outline bulges outwards, -1 inwards */
  readonly way: number;
  /** so tight that one dart takes it all out */
  readonly sharp: boolean;
}

/** Whether what turns after a gap (m) is of the same bend; a sharp turn is one by itself. */
const joins = (last: Pick<Run, 'way' | 'sharp'>, next: Pick<Run, 'way' | 'sharp'>, gap: number, longestGap: number) =>
  last.way === next.way && last.sharp === next.sharp && gap <= (next.sharp ? oncePlace : longestGap);

/** Turns the other way of less than `least` (rad) are none: a line that was drawn by hand or measured wavers. */
function bends(stretches: readonly Bend[], longestGap: number, least: number, tight: readonly boolean[]): Run[] {
  const trend = trendOf(stretches, least);
  const runs: Run[] = [];
  let gap = 0;
  const gaps: number[] = [];
  stretches.forEach(({ turn, length }, i) => {
    if (turn === 0) {
      gap += length;
      return;
    }
    const last = runs.at(-1);
    const way = trend[i]!;
    const sharp = tight[i] === true;
    if (last !== undefined && joins(last, { way, sharp }, gap, longestGap)) {
      last.last = i;
      last.turn += turn;
      last.length += gap + length;
    } else {
      runs.push({ first: i, last: i, turn, length, way, sharp });
      gaps.push(gap);
    }
    gap = 0;
  });
  return closed(runs, gap + (gaps[0] ?? 0), longestGap);
}

/** The outline is closed: its last bend may go on in its first. */
function closed(runs: Run[], gap: number, longestGap: number): Run[] {
  const [first, last] = [runs[0], runs.at(-1)];
  if (first === undefined || last === undefined || first === last) return runs;
  if (!joins(last, first, gap, longestGap)) return runs;
  const both = { turn: first.turn + last.turn, length: first.length + gap + last.length };
  return [{ ...first, ...both, first: last.first }, ...runs.slice(1, -1)];
}

function need({ first, last, turn, length, way }: Run, { reach, landing }: Overhang, habit: DartHabit): BendNeed {
  const excess = turn * (reach + landing);
  const left = Math.abs(excess) * (1 - habit.shear);
  const outward = way > 0;
  const wanted = left < (habit.least ?? 0) ? 0 : Math.max(0, Math.ceil(left / habit.widest - 1e-9));
  const cuts = Math.min(wanted, mostCuts(length + turn * reach, outward ? left : 0, habit.tongue ?? 0));
  const width = cuts > 0 ? left / cuts : 0;
  return {
    first,
    last,
    turn,
    length,
    excess,
    left,
    darts: outward ? cuts : 0,
    slits: outward ? 0 : cuts,
    width,
    widest: Math.max(habit.widest, width),
    depth: reach - habit.keepOff,
  };
}

/** How many cuts have room on a stretch of the free edge (m) of which they take `taken`, with a tongue between each two. */
function mostCuts(edge: number, taken: number, tongue: number): number {
  return tongue > 0 ? 1 + Math.max(0, Math.floor((edge - taken) / tongue + 1e-9)) : Infinity;
}

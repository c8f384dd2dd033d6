import type { Bend } from './excess.ts';

/** Along the outline that much to either side counts as one place, m. */
export const oncePlace = 0.015;

/** What a place of the free edge has to give up: `loss` m for each rad of turn, `reach` m out; `most` is the widest dart, m. */
export interface EdgeLoss {
  readonly reach: number;
  readonly loss: number;
  readonly most: number;
}

/** More than that share of the free edge in darts leaves threads between them. */
const threads = 0.7;

/**
 * Where the outline turns so sharply that there is room for one dart alone: at a corner that needs more than the widest one, and on
 * a bend so tight that darts would take more than 70 % of the free edge within 15 mm to either side.
 */
export function tightPlaces(stretches: readonly Bend[], { reach, loss, most }: EdgeLoss): readonly boolean[] {
  const n = stretches.length;
  const middles = new Float64Array(n);
  let round = 0;
  stretches.forEach(({ length }, i) => {
    middles[i] = round + length / 2;
    round += length;
  });
  const tight = stretches.map(({ turn, length }) => {
    if (turn === 0) return false;
    if (length === 0) return loss * Math.abs(turn) > most;
    // of a long arc as much as lies within the place
    const within = Math.min(length, 2 * oncePlace);
    const lost = (loss * Math.abs(turn) * within) / length;
    const edge = within + (reach * Math.abs(turn) * within) / length;
    return lost > threads * edge && lost > most;
  });
  // a tight bend that is drawn as many short straights, or arcs: what turns within the place
  let [low, high, sum] = [0, -1, 0];
  const at = (i: number) => middles[((i % n) + n) % n]! + Math.floor(i / n) * round;
  for (let i = 0; i < n && round > 4 * oncePlace; i++) {
    while (at(high + 1) <= at(i) + oncePlace) sum += stretches[((++high % n) + n) % n]!.turn;
    while (at(low) > at(i) - oncePlace) sum += stretches[((--low % n) + n) % n]!.turn;
    while (at(low) < at(i) - oncePlace) sum -= stretches[((low++ % n) + n) % n]!.turn;
    const { turn, length } = stretches[i]!;
    if (turn * sum <= 0 || length > oncePlace) continue;
    const edge = 2 * oncePlace + reach * Math.abs(sum);
    if (loss * Math.abs(sum) > threads * edge && loss * Math.abs(sum) > most) tight[i] = true;
  }
  return tight;
}

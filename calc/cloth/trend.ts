import type { Bend } from './excess.ts';

/**
 * Which way the outline bends on the whole at each of its stretches: 1 outwards, -1 inwards. What turns back by less than
 * `least` (rad) is part of the bend that it wavers about. The turn added up along the line is followed to its highest and
 * lowest points; only those count that it comes down or up from by `least` (hysteresis). With 0 it is the sign of each turn.
 */
export function trendOf(stretches: readonly Bend[], least: number): readonly number[] {
  if (!(least > 0)) return stretches.map(({ turn }) => Math.sign(turn));
  const n = stretches.length;
  // three times round: in the middle one every bend is seen with what comes before and after it
  const ways = new Int8Array(3 * n);
  let [sum, way] = [0, 0];
  let [high, highAt, low, lowAt] = [0, -1, 0, -1];
  let settled = 0;
  let at = 0;
  const settle = (upTo: number, as: number) => {
    for (; settled <= upTo; settled++) ways[settled] = as;
  };
  for (let i = 0; i < 3 * n; i++) {
    sum += stretches[at]!.turn;
    at = at + 1 < n ? at + 1 : 0;
    if (sum >= high) [high, highAt] = [sum, i];
    if (sum <= low) [low, lowAt] = [sum, i];
    if (way >= 0 && high - sum >= least) {
      settle(highAt, 1);
      way = -1;
      [low, lowAt] = [sum, i];
      [high, highAt] = [sum, i];
    } else if (way <= 0 && sum - low >= least) {
      settle(lowAt, -1);
      way = 1;
      [high, highAt] = [sum, i];
      [low, lowAt] = [sum, i];
    }
  }
  settle(3 * n - 1, way === 0 ? 1 : way);
  return Array.from(ways.subarray(n, 2 * n));
}

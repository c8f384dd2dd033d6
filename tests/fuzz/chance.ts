/** Random choices that a seed repeats. */
export interface Chance {
  /** in [0, 1) */
  next(): number;
  /** a whole number from 0, below `limit` */
  below(limit: number): number;
  /** true in one of `of` cases */
  oneIn(of: number): boolean;
  pick<T>(from: readonly T[]): T;
}

/** Mulberry32: 32 bits of state, good enough to pick edits with (Tommy Ettinger, 2017; public domain; from memory). */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    next,
    below,
    oneIn: (of) => below(of) === 0,
    pick(from) {
      if (from.length === 0) throw new Error('nothing to pick from');
      return from[below(from.length)] as (typeof from)[number];
    },
  };
}

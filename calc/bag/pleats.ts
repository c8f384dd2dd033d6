import { count, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Pleats along the tape: how many all round, and how high each stands (m). A pleat gives twice its height of film. */
export interface Pleats {
  readonly count: number;
  readonly height: number;
}

/** Pairs of pleats on opposite sides: those that lengthen the film along x, and those that widen it along y. */
export interface PleatPairs {
  readonly along: number;
  readonly across: number;
}

/**
 * Shares pleats over the sides of a bag `length` by `width` (m) by the length of the sides; an odd one is paired up.
 */
export function pleatPairs(pleats: number, length: number, width: number): Outcome<PleatPairs> {
  return given(
    [
      count('the number of pleats', pleats, 0),
      positive('the length of the bag', length),
      positive('the width of the bag', width),
    ],
    () => {
      const pairs = Math.ceil(pleats / 2);
      const short = Math.min(length, width) / (length + width);
      const fewer = pairs >= 2 ? Math.max(1, Math.round(pairs * short)) : 0;
      return length >= width ? { along: pairs - fewer, across: fewer } : { along: fewer, across: pairs - fewer };
    },
  );
}

/**
 * Pleats (all round) that let film reach down to the tool beside a stack: on each side as many as make up for the way
 * up and down it, 2 h, at twice the pleat's height each; at least one a side where there is any stack.
 */
export function pleatsNeeded(stackHeight: number, pleatHeight: number): Outcome {
  return given(
    [notNegative('the height of the stack', stackHeight), positive('the height of a pleat', pleatHeight)],
    () => 4 * Math.max(0, Math.ceil(stackHeight / pleatHeight - 1e-9)),
  );
}

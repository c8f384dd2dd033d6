import type { Bench, Usual } from '../../../calc/figure/index.ts';
import { habitOf } from './habit.ts';
import { arealWeight, metres } from './shown.ts';

/** How far cloth of 600 g/m2 runs out where it ends inside the part. */
const RUN_OUT: Usual = {
  habit: 'drop',
  what: 'run-out of 600 g/m2 of cloth',
  value: metres(0.025),
  source: 'from memory',
};

/** Cloth that may end at one line. */
const ONE_LINE: Usual = {
  habit: 'one_line',
  what: 'cloth that may end at one line',
  value: arealWeight(0.6),
  source: 'from memory',
};

/** The cloth (kg/m2) that may end at one line. */
export const atOneLineOf = (bench: Bench): number => habitOf(bench, ONE_LINE);

/** The run-out (m) of cloth of a weight (kg/m2). */
export const runOutOf = (bench: Bench, weight: number): number => (habitOf(bench, RUN_OUT) * weight) / 0.6;

import type { Bench, Usual } from '../../../calc/figure/index.ts';
import { habitOf } from './habit.ts';
import { metres } from './shown.ts';

/** How far cloth of 600 g/m2 runs out where it ends inside the part. */
const RUN_OUT: Usual = {
  habit: 'drop',
  what: 'run-out of 600 g/m2 of cloth',
  value: metres(0.025),
  source: 'from memory',
};

/** The run-out (m) of cloth of a weight (kg/m2). */
export const runOutOf = (bench: Bench, weight: number): number => (habitOf(bench, RUN_OUT) * weight) / 0.6;

import { type Bench, type Usual, usually } from '../../../calc/figure/index.ts';

/** A threshold: the habit of the shop, else what is usual; SI. */
export const habitOf = (bench: Bench, threshold: Usual): number => usually(bench, threshold);

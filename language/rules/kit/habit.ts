/** A threshold: the habit of the shop, else what is usual; SI. */
export { habitOf } from '../../../calc/figure/index.ts';

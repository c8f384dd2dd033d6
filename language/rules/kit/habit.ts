import { type Bench, isKnown, type Usual, usual } from '../../../calc/figure/index.ts';

/** A threshold: the habit of the shop, else what is usual; SI. */
export function habitOf(bench: Bench, threshold: Usual): number {
  const figure = usual(bench, threshold);
  return isKnown(figure) ? figure.value : threshold.value.si;
}

import { allFinite } from '../outcome.ts';
import { cannot, type Figure, isKnown, reason, text } from './figure.ts';

/** The last guard: no figure ever carries a number that is none. Every figure that a bench computes goes through it. */
export function finiteFigure<T>(name: string, figure: Figure<T>): Figure<T> {
  if (!isKnown(figure) || allFinite(figure.value)) return figure;
  return cannot(
    reason('computed', text('{name}: the values are so large or so small that no result can be told', { name })),
  );
}

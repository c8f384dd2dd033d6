import { cannot, type Figure, isKnown, reason, text } from './figure.ts';

/** The last guard: no figure ever carries a number that is none. Every figure that a bench computes goes through it. */
export function finiteFigure<T>(name: string, figure: Figure<T>): Figure<T> {
  if (!isKnown(figure) || allFinite(figure.value)) return figure;
  return cannot(
    reason('computed', text('{name}: the values are so large or so small that no result can be told', { name })),
  );
}

function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null) return true;
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) if (!allFinite(value[i])) return false;
    return true;
  }
  // a quantity: its dimension is a constant
  if ('si' in value && 'dimension' in value) return allFinite(value.si);
  for (const key in value) if (!allFinite((value as Record<string, unknown>)[key])) return false;
  return true;
}

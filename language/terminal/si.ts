import { isText, type Shown } from '../../calc/figure/figure.ts';
import { composedSymbol } from '../../calc/quantity/names.ts';
import type { Quantity } from '../../calc/quantity/types.ts';

/** A number in SI base units (`kg/m2`; `1` for a bare number or ratio). Money has its currency beside it. */
export interface SiNumber {
  readonly value: number;
  readonly unit: string;
  /** ISO 4217 */
  readonly currency?: string;
}

/** Ten significant digits: more is noise of the reckoning, and differs between machines. */
const rounded = (value: number): number => Number(value.toPrecision(10));

export function siNumber({ si, dimension, currency }: Quantity): SiNumber | undefined {
  if (!Number.isFinite(si)) return undefined;
  const symbol = composedSymbol(dimension, currency ?? 'money');
  const unit = symbol === '' ? '1' : symbol.startsWith('/') ? `1${symbol}` : symbol;
  return { value: rounded(si), unit, ...(currency === undefined ? {} : { currency }) };
}

/** The numbers among the figures of a text; names and words are in its message. */
export function siNumbers(figures: Readonly<Record<string, Shown>>): Record<string, SiNumber> {
  const numbers = Object.entries(figures).flatMap(([name, shown]) => {
    const value =
      typeof shown === 'number'
        ? Number.isFinite(shown)
          ? { value: rounded(shown), unit: '1' }
          : undefined
        : typeof shown === 'string' || isText(shown)
          ? undefined
          : siNumber(shown);
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(numbers);
}

import { type Shown, text, type Words } from '../figure/figure.ts';
import { either } from '../figure/listed.ts';
import { NUMBER, sameDimension } from './dimension.ts';
import { describeDimension, describeQuantity } from './names.ts';
import { parseUnit } from './parse.ts';
import type { AmbiguousUnit, Dimension, Quantity, QuantityProblem, Unit, UnknownUnit } from './types.ts';

/**
 * A number and its unit as a quantity. An empty unit makes a bare number. `expected` decides spellings with several
 * meanings (`oz`); it is not a check of the dimension.
 */
export function makeQuantity(number: number, unitText: string, expected?: Dimension): Quantity | QuantityProblem {
  if (!Number.isFinite(number)) return notFinite();
  if (unitText.trim() === '') return bareNumber(number);
  const read = parseUnit(unitText, expected);
  return 'unit' in read ? quantityIn(number, read.unit) : unitProblem(read);
}

export function isProblem(result: object): result is QuantityProblem {
  return 'problem' in result;
}

/** A count or ratio with no unit. */
export function bareNumber(number: number): Quantity {
  return { si: number, dimension: NUMBER };
}

/** A computed value in SI; `currency` where money is part of it, `difference` for a step of temperature. */
export function siQuantity(
  si: number,
  dimension: Dimension,
  kind: { readonly currency?: string; readonly difference?: true } = {},
): Quantity {
  return { si, dimension, ...kind };
}

/** `number` of `unit`, in SI; the offset of a temperature scale included. */
export function quantityIn(number: number, unit: Unit): Quantity | QuantityProblem {
  const si = (number * unit.up) / unit.down + (unit.offset ?? 0);
  if (!Number.isFinite(si)) return notFinite();
  if (unit.offset !== undefined && si < 0) {
    const least = (-unit.offset * unit.down) / unit.up;
    const message = text('{number} {unit} is below absolute zero ({least} {symbol})', {
      number: String(number),
      unit: unit.symbol,
      least: String(Number(least.toFixed(2))),
      symbol: unit.symbol,
    });
    return { problem: 'below-absolute-zero', message, choices: [] };
  }
  return {
    si,
    dimension: unit.dimension,
    unit: unit.symbol,
    ...(unit.currency === undefined ? {} : { currency: unit.currency }),
    ...(unit.difference === undefined ? {} : { difference: unit.difference }),
  };
}

export interface Converted {
  readonly value: number;
  readonly unit: Unit;
}

/** The number to write before `unitText`. */
export function convert(quantity: Quantity, unitText: string): Converted | QuantityProblem {
  const read = parseUnit(unitText, quantity.dimension);
  if (!('unit' in read)) return unitProblem(read);
  const { unit } = read;
  const wrongScale = quantity.difference === true && unit.offset !== undefined;
  if (!sameDimension(unit.dimension, quantity.dimension) || wrongScale) {
    const found = wrongScale ? 'a temperature' : describeDimension(unit.dimension);
    return wrongDimension(
      text('{what} cannot be shown in {unit}, the unit of {found}', {
        what: describeQuantity(quantity),
        unit: unit.symbol,
        found,
      }),
    );
  }
  if (unit.currency !== quantity.currency) {
    const [from = 'no currency', to = 'no currency'] = [quantity.currency, unit.currency];
    return wrongDimension(text('{from} cannot be shown in {to}: there is no rate of exchange here', { from, to }));
  }
  return { value: ((quantity.si - (unit.offset ?? 0)) * unit.down) / unit.up, unit };
}

function wrongDimension(message: Words): QuantityProblem {
  return { problem: 'wrong-dimension', message, choices: [] };
}

function notFinite(): QuantityProblem {
  return { problem: 'not-finite', message: 'this number is too large to reckon with', choices: [] };
}

/** What to tell about a unit that cannot be read. */
export function unitProblem(read: UnknownUnit | AmbiguousUnit): QuantityProblem {
  if ('ambiguous' in read) {
    const message = text('{unit} means more than one unit: write {choices}', {
      unit: read.ambiguous,
      choices: oneOf(read.choices),
    });
    return { problem: 'ambiguous-unit', message, choices: read.choices };
  }
  const figures = { unit: read.unknown, nearest: oneOf(read.nearest) };
  const message =
    read.nearest.length === 0
      ? text('{unit} is not a unit known here', figures)
      : text('{unit} is not a unit known here; {nearest} may be meant', figures);
  return { problem: 'unknown-unit', message, choices: read.nearest };
}

const oneOf = (words: readonly string[]): Shown =>
  words.length < 2 ? words.join('') : either([words.slice(0, -1).join(', '), words.at(-1) ?? '']);

import { text, type Words } from '../figure/figure.ts';
import { sameDimension, TEMPERATURE, timesPower } from './dimension.ts';
import { describeQuantity } from './names.ts';
import { convert, isProblem, makeQuantity } from './quantity.ts';
import type { Mismatch, Quantity } from './types.ts';

/*
 * Temperatures are points of a scale, differences are steps on it: point + step and point - step are points,
 * point - point is a step, and nothing else can be made of points. (SP 811 section 8.5 keeps the two apart likewise.)
 */

export function add(left: Quantity, right: Quantity): Quantity | Mismatch {
  const problem = cannotAdd(
    left,
    right,
    text('{right} cannot be added to {left}', { right: describeQuantity(right), left: describeQuantity(left) }),
  );
  if (problem !== undefined) return problem;
  if (isPoint(left) && isPoint(right)) {
    return mismatch(left, right, 'two-temperatures', 'two temperatures cannot be added; write the step in K');
  }
  return computed(left, right, left.si + right.si, isPoint(left) || isPoint(right));
}

export function subtract(left: Quantity, right: Quantity): Quantity | Mismatch {
  const problem = cannotAdd(
    left,
    right,
    text('{right} cannot be taken from {left}', { right: describeQuantity(right), left: describeQuantity(left) }),
  );
  if (problem !== undefined) return problem;
  if (isPoint(right) && !isPoint(left)) {
    return mismatch(left, right, 'temperature', 'a temperature cannot be taken from a temperature difference');
  }
  return computed(left, right, left.si - right.si, isPoint(left) && !isPoint(right));
}

export function multiply(left: Quantity, right: Quantity): Quantity | Mismatch {
  return product(left, right, left.si * right.si, 1);
}

export function divide(left: Quantity, right: Quantity): Quantity | Mismatch {
  if (right.si === 0) return mismatch(left, right, 'division-by-zero', 'this divides by zero');
  return product(left, right, left.si / right.si, -1);
}

/** The minus sign before a quantity: on its own scale, so that the sign before `5 degC` gives -5 degC. */
export function negate(quantity: Quantity): Quantity | Mismatch {
  if (!isPoint(quantity)) return { ...quantity, si: -quantity.si + 0 };
  const typed = quantity.unit === undefined ? undefined : convert(quantity, quantity.unit);
  const negative = typed === undefined || isProblem(typed) ? undefined : makeQuantity(-typed.value, typed.unit.symbol);
  if (negative === undefined || isProblem(negative)) {
    return mismatch(quantity, quantity, 'temperature', negative?.message ?? 'a temperature has no opposite');
  }
  return negative;
}

export function isMismatch(result: object): result is Mismatch {
  return 'mismatch' in result;
}

/** A point on a temperature scale (degC), as against a step of it (K). */
function isPoint(quantity: Quantity): boolean {
  return quantity.difference !== true && sameDimension(quantity.dimension, TEMPERATURE);
}

function mismatch(left: Quantity, right: Quantity, because: Mismatch['because'], message: Words): Mismatch {
  return { mismatch: { left: left.dimension, right: right.dimension }, because, message };
}

function cannotAdd(left: Quantity, right: Quantity, message: Words): Mismatch | undefined {
  if (!sameDimension(left.dimension, right.dimension)) return mismatch(left, right, 'dimensions', message);
  if (left.currency !== right.currency) return otherCurrency(left, right);
  return undefined;
}

function otherCurrency(left: Quantity, right: Quantity): Mismatch {
  const [one, other] = [left.currency ?? 'no currency', right.currency ?? 'no currency'];
  const message = text('{one} and {other} cannot be reckoned together: there is no rate of exchange here', {
    one,
    other,
  });
  return mismatch(left, right, 'currencies', message);
}

function computed(left: Quantity, right: Quantity, si: number, isPointNow: boolean): Quantity | Mismatch {
  if (!Number.isFinite(si)) return tooLarge(left, right);
  const { dimension, currency } = left;
  const isStep = !isPointNow && sameDimension(dimension, TEMPERATURE);
  return { si, dimension, ...(currency === undefined ? {} : { currency }), ...(isStep ? { difference: true } : {}) };
}

function product(left: Quantity, right: Quantity, si: number, power: 1 | -1): Quantity | Mismatch {
  if (isPoint(left) || isPoint(right)) {
    const message = 'a temperature cannot be multiplied or divided; a temperature difference in K can';
    return mismatch(left, right, 'temperature', message);
  }
  if (left.currency !== undefined && right.currency !== undefined && left.currency !== right.currency) {
    return otherCurrency(left, right);
  }
  if (!Number.isFinite(si)) return tooLarge(left, right);
  const dimension = timesPower(left.dimension, right.dimension, power);
  const currency = dimension.money === 0 ? undefined : (left.currency ?? right.currency);
  const isStep = sameDimension(dimension, TEMPERATURE);
  return { si, dimension, ...(currency === undefined ? {} : { currency }), ...(isStep ? { difference: true } : {}) };
}

function tooLarge(left: Quantity, right: Quantity): Mismatch {
  return mismatch(left, right, 'not-finite', 'the result is too large to reckon with');
}

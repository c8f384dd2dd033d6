import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Words } from '../../calc/figure/figure.ts';
import type { Mismatch, Quantity } from '../../calc/quantity/index.ts';
import {
  add,
  bareNumber,
  divide,
  formatQuantity,
  isMismatch,
  isProblem,
  makeQuantity,
  multiply,
  negate,
  subtract,
} from '../../calc/quantity/index.ts';
import { inWords } from '../harness/words.ts';

function made(number: number, unit: string): Quantity {
  const quantity = makeQuantity(number, unit);
  if (isProblem(quantity)) throw new Error(inWords(quantity.message));
  return quantity;
}

function fine(result: Quantity | Mismatch): Quantity {
  if (isMismatch(result)) throw new Error(inWords(result.message));
  return result;
}

const shown = (result: Quantity | Mismatch): string => ('mismatch' in result ? result.because : formatQuantity(result));

const messageOf = (result: object): string => ('message' in result ? inWords(result.message as Words) : '');

describe('sums', () => {
  it('mix units of one dimension', () => {
    expect(shown(add(made(12, 'mm'), made(0.5, 'in')))).toBe('24.7 mm');
    expect(shown(subtract(made(1, 'kg'), made(1, 'lb')))).toBe('546 g');
  });

  it('of different dimensions are refused with both names', () => {
    const sum = add(made(12, 'mm'), made(680, 'g/m2'));
    expect(sum).toMatchObject({
      mismatch: { left: made(1, 'm').dimension, right: made(1, 'g/m2').dimension },
      because: 'dimensions',
    });
    expect(messageOf(sum)).toBe('an areal weight cannot be added to a length');
    expect(messageOf(subtract(made(12, 'mm'), bareNumber(3)))).toBe('a bare number cannot be taken from a length');
  });

  it('of two currencies are refused', () => {
    expect(shown(add(made(1, 'EUR'), made(1, 'GBP')))).toBe('currencies');
    expect(shown(multiply(made(1, 'EUR/m2'), made(1, 'm2/GBP')))).toBe('currencies');
    expect(shown(add(made(1, 'EUR'), made(1, 'EUR')))).toBe('2 EUR');
  });

  it('keep points and steps of temperature apart', () => {
    const [warm, cold, step] = [made(23, 'degC'), made(50, 'degF'), made(10, 'K')];
    expect(shown(add(warm, step))).toBe('33 degC');
    expect(shown(add(step, warm))).toBe('33 degC');
    expect(shown(subtract(warm, step))).toBe('13 degC');
    expect(shown(subtract(warm, cold))).toBe('13 K');
    expect(shown(add(step, step))).toBe('20 K');
    expect(shown(add(warm, cold))).toBe('two-temperatures');
    expect(shown(subtract(step, warm))).toBe('temperature');
    expect(shown(multiply(warm, bareNumber(2)))).toBe('temperature');
    expect(shown(divide(bareNumber(2), warm))).toBe('temperature');
  });
});

describe('products', () => {
  it('make the quantities of the trade', () => {
    expect(shown(multiply(made(680, 'g/m2'), made(0.45, 'm2')))).toBe('306 g');
    expect(shown(multiply(made(9.8, 'EUR/m2'), made(0.45, 'm2')))).toBe('4.41 EUR');
    expect(shown(divide(made(680, 'g/m2'), multiply(made(2.56, 'g/cm3'), made(52, '%')) as Quantity))).toBe('0.511 mm');
    expect(shown(divide(made(50, 'K'), made(10, 'K/h')))).toBe('5 h');
    expect(shown(multiply(made(10, 'K/h'), made(5, 'h')))).toBe('50 K');
    expect(shown(divide(made(12, 'EUR'), made(3, 'EUR')))).toBe('4');
  });

  it('stay numbers: no division by zero, nothing infinite', () => {
    expect(shown(divide(made(1, 'm'), made(0, 's')))).toBe('division-by-zero');
    expect(shown(multiply(made(1e300, 'm'), made(1e300, 'm')))).toBe('not-finite');
    expect(shown(add(made(1.7e308, 'm'), made(1.7e308, 'm')))).toBe('not-finite');
  });
});

describe('the minus sign', () => {
  it('turns a quantity, and a temperature on its own scale', () => {
    expect(shown(negate(made(12, 'mm')))).toBe('-12 mm');
    expect(negate(made(5, 'degC'))).toEqual(made(-5, 'degC'));
    expect(negate(made(5, 'degF'))).toHaveProperty('si', expect.closeTo(made(-5, 'degF').si, 10));
    expect(messageOf(negate(made(300, 'degC')))).toBe('-300 degC is below absolute zero (-273.15 degC)');
    expect(shown(negate(add(made(5, 'degC'), made(1, 'K')) as Quantity))).toBe('temperature');
    expect(Object.is(fine(negate(made(0, 'mm'))).si, 0)).toBe(true);
  });
});

describe('laws', () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const unit = fc.constantFrom('mm', 'g/m2', 'K', 'EUR/m2', 'min', 'mPa.s', '%', 'oz/yd2');
  const any = fc.tuple(value, unit).map(([number, text]) => made(number, text));
  const three = fc
    .tuple(value, value, value, unit)
    .map(([a, b, c, text]) => [made(a, text), made(b, text), made(c, text)] as const);

  it('a + b = b + a, (a + b) - b = a, a - b = a + (-b)', () => {
    fc.assert(
      fc.property(three, ([a, b]) => {
        expect(add(a, b)).toEqual(add(b, a));
        expect(fine(subtract(fine(add(a, b)), b)).si).toBeCloseTo(a.si, 6);
        expect(subtract(a, b)).toEqual(add(a, fine(negate(b))));
      }),
    );
  });

  it('a b = b a, and a b / b = a with its dimension', () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(multiply(a, b)).toEqual(multiply(b, a));
        fc.pre(Math.abs(b.si) > 1e-9);
        const back = fine(divide(fine(multiply(a, b)), b));
        expect([back.dimension, back.currency, back.difference]).toEqual([a.dimension, a.currency, a.difference]);
        expect(Math.abs(back.si - a.si)).toBeLessThanOrEqual(Math.abs(a.si) * 1e-12 + 1e-300);
      }),
    );
  });

  it('a (b + c) = a b + a c', () => {
    fc.assert(
      fc.property(any, three, (a, [b, c]) => {
        const left = fine(multiply(a, fine(add(b, c))));
        const right = fine(add(fine(multiply(a, b)), fine(multiply(a, c))));
        const size = Math.abs(a.si) * (Math.abs(b.si) + Math.abs(c.si));
        expect(left.dimension).toEqual(right.dimension);
        expect(Math.abs(left.si - right.si)).toBeLessThanOrEqual(size * 1e-14 + 1e-300);
      }),
    );
  });
});

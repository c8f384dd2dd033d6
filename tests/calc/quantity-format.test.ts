import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitsOf } from '../../calc/quantity/complete.ts';
import type { FormatOptions, Quantity } from '../../calc/quantity/index.ts';
import {
  BEYOND_RECKONING,
  dimension,
  formatNumber,
  formatQuantity,
  isProblem,
  makeQuantity,
  sameDimension,
  siQuantity,
} from '../../calc/quantity/index.ts';
import { NAMED } from '../../calc/quantity/names.ts';
import { inWords } from '../harness/words.ts';

function made(number: number, unit: string): Quantity {
  const quantity = makeQuantity(number, unit);
  if (isProblem(quantity)) throw new Error(inWords(quantity.message));
  return quantity;
}

const show = (number: number, unit: string, options?: FormatOptions): string =>
  formatQuantity(made(number, unit), options);

describe('quantities for people', () => {
  it.each([
    [0.0384, 'm', '38.4 mm'],
    [1180, 'mm', '1180 mm'],
    [1234.4, 'mm', '1234 mm'],
    [12.3456, 'm', '12.35 m'],
    [50, 'um', '50 um'],
    [0, 'm', '0 mm'],
    [0.68, 'kg/m2', '680 g/m2'],
    [0.15, 'kg', '150 g'],
    [1150, 'g', '1.15 kg'],
    [6600, 's', '110 min'],
    [90, 's', '90 s'],
    [48, 'h', '48 h'],
    [30, 'days', '30 days'],
    [12, 'months', '12 months'],
    [296.15 - 273.15, 'degC', '23 degC'],
    [5000, 'Pa', '50 mbar'],
    [27e6, 'Pa', '27 MPa'],
    [70e9, 'Pa', '70 GPa'],
    [0.29, 'Pa.s', '290 mPa.s'],
    [1100, 'kg/m3', '1.1 g/cm3'],
    [0.08, 'g/cm3', '80 kg/m3'],
    [1.1e-10, 'm2', '1.1e-10 m2'],
    [9.8, 'EUR/m2', '9.80 EUR/m2'],
    [34, 'EUR/h', '34 EUR/h'],
    [4.2, 'EUR/each', '4.20 EUR/each'],
    [0.0042, 'EUR/m', '0.0042 EUR/m'],
    [1234.5, 'JPY', '1235 JPY'],
    [20, 'deg', '20 deg'],
    [12, '%', '12 %'],
    [2.3e-5, '/K', '2.3e-5 /K'],
    [1.5, 'K/min', '1.5 K/min'],
    [10, 'K/h', '10 K/h'],
    [95, 'kg', '95 kg'],
    [2, '', '2'],
    [0.52, '', '0.52'],
    [3, 'kg/m4', '3 kg/m4'],
    [-5, 'mm', '-5 mm'],
    [-1e-9, 'mm', '-1e-6 um'],
  ])('%d %s is shown as %s', (number, unit, text) => {
    expect(show(number, unit)).toBe(text);
  });

  it('in US customary units, and in both', () => {
    expect(show(680, 'g/m2', { system: 'us' })).toBe('20.1 oz/yd2');
    expect(show(12.7, 'mm', { system: 'both' })).toBe('12.7 mm (0.5 in)');
    expect(show(110, 'min', { system: 'both' })).toBe('110 min');
    expect(show(10, 'K', { system: 'us' })).toBe('18 degF difference');
    expect(show(7.4, 'EUR/m2', { system: 'us' })).toBe('6.19 EUR/yd2');
  });

  it('in a unit and with digits that are asked for, where they fit', () => {
    expect(show(500, 'um', { unit: 'um' })).toBe('500 um');
    expect(show(1.5, 'oz/ft2', { unit: 'oz/ft2', digits: 2 })).toBe('1.5 oz/ft2');
    expect(show(12, 'mm', { unit: 'kg' })).toBe('12 mm');
    expect(show(0.52, '', { unit: '%' })).toBe('52 %');
    expect(show(1234.56, 'mm', { digits: 2 })).toBe('1235 mm');
    expect(show(1, 'm', { unit: 'in', digits: 6 })).toBe('39.3701 in');
    expect(show(1, 'months', { unit: 'months' })).toBe('1 month');
  });

  it('in a language', () => {
    expect(show(1234.5, 'EUR/m2', { locale: 'de-DE' })).toBe('1.234,50 EUR/m2');
    expect(show(1.15, 'kg', { locale: 'de-DE' })).toBe('1,15 kg');
    expect(show(1.15, 'kg', { locale: 'no such place' })).toBe('1.15 kg');
  });

  it('never shows what is no number', () => {
    for (const si of [Number.NaN, Infinity, -Infinity]) {
      expect(formatQuantity(siQuantity(si, dimension({ length: 1 })))).toBe(BEYOND_RECKONING);
      expect(formatNumber(si)).toBe(BEYOND_RECKONING);
    }
    const exponent = fc.integer({ min: -3, max: 3 });
    const any = fc.record({
      length: exponent,
      mass: exponent,
      time: exponent,
      temperature: exponent,
      angle: exponent,
      money: exponent,
    });
    const systems = fc.constantFrom('si' as const, 'us' as const, 'both' as const);
    fc.assert(
      fc.property(fc.double(), any, systems, (si, of, system) => {
        const quantity = siQuantity(si, dimension(of), of.money === 0 ? {} : { currency: 'EUR' });
        const text = formatQuantity(quantity, { system });
        expect(text).not.toMatch(/NaN|Infinity|undefined|¤|^-0( |$)/);
      }),
    );
  });
});

describe('shown and read again', () => {
  const units = NAMED.flatMap(({ name }) => unitsOf(name)).filter((unit) => unit.currency === undefined);
  const value = fc.double({ min: 0.01, max: 9999, noNaN: true });

  it('a quantity is the same within the digits shown', () => {
    const systems = fc.constantFrom('si' as const, 'us' as const);
    fc.assert(
      fc.property(fc.constantFrom(...units), value, systems, (unit, number, system) => {
        const quantity = made(number, unit.symbol);
        const [digits = '', ...rest] = formatQuantity(quantity, { system }).split(' ');
        const again = made(Number(digits), rest.join(' '));
        expect(sameDimension(again.dimension, quantity.dimension)).toBe(true);
        expect(again.difference).toBe(quantity.difference);
        // three digits: half of the last in 1.00; temperatures are rounded on their own scale, where zero is near
        const allowed = unit.offset === undefined ? Math.abs(quantity.si) * 0.00501 : 0.51;
        expect(Math.abs(again.si - quantity.si)).toBeLessThanOrEqual(allowed);
      }),
      { numRuns: 1000 },
    );
  });

  it('a price is the same within half a cent, or two digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0001, max: 1e5, noNaN: true }), (number) => {
        const [digits = '', unit = ''] = show(number, 'EUR/m2').split(' ');
        expect(Math.abs(made(Number(digits), unit).si - number)).toBeLessThanOrEqual(
          Math.min(0.00501, number * 0.0501),
        );
      }),
    );
  });
});

describe('numbers for people', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [12.5, '12.5'],
    [12345.678, '12346'],
    [0.00012346, '0.0001235'],
    [0.00001, '1e-5'],
    [1e12, '1e12'],
    [100, '100'],
    [0.1 + 0.2, '0.3'],
    [9.99996, '10'],
    [-0.0000001, '-1e-7'],
  ])('%d is shown as %s', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });
});

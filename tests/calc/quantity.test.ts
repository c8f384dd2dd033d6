import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../calc/quantity/index.ts';
import {
  CURRENCIES,
  convert,
  describeDimension,
  describeQuantity,
  dimension,
  isProblem,
  MASS,
  makeQuantity,
  namedDimension,
  parseUnit,
  sameDimension,
  unitsOf,
} from '../../calc/quantity/index.ts';
import { composedSymbol, NAMED } from '../../calc/quantity/names.ts';
import { editDistance } from '../../calc/quantity/nearest.ts';
import { UNIT_ATOMS } from '../../calc/quantity/units.ts';
import { inWords } from '../harness/words.ts';

/** every unit that is offered anywhere, with two currencies */
const OFFERED = NAMED.flatMap(({ name }) => [...unitsOf(name), ...unitsOf(name, 'GBP')]);

function made(number: number, unit: string): Quantity {
  const quantity = makeQuantity(number, unit);
  if (isProblem(quantity)) throw new Error(inWords(quantity.message));
  return quantity;
}

function symbolOf(text: string): string {
  const read = parseUnit(text);
  return 'unit' in read ? read.unit.symbol : `not a unit: ${JSON.stringify(read)}`;
}

describe('reading units', () => {
  it.each([
    ['°C', 'degC'],
    ['° C', 'degC'],
    ['℃', 'degC'],
    ['°F', 'degF'],
    ['°', 'deg'],
    ['m²', 'm2'],
    ['m^2', 'm2'],
    ['µm', 'um'],
    ['μm', 'um'],
    ['g/m²', 'g/m2'],
    ['gsm', 'g/m2'],
    ['thou', 'mil'],
    ['mPa·s', 'mPa.s'],
    ['cps', 'cP'],
    ['l', 'L'],
    ['mL', 'ml'],
    ['cc', 'ml'],
    ['US gal', 'US gal'],
    ['US  gal', 'US gal'],
    ['lb/US gal', 'lb/US gal'],
    ['days', 'd'],
    ['month', 'months'],
    ['hours', 'h'],
    ['degC/min', 'K/min'],
    ['°C/min', 'K/min'],
    ['degF/min', 'degF/min'],
    ['€/m2', 'EUR/m2'],
    ['£', 'GBP'],
    ['EUR/ea', 'EUR/each'],
    ['1/K', '/K'],
    ['K^-1', '/K'],
    ['W/(m·K)', 'W/m.K'],
    ['kJ·kg⁻¹', 'kJ/kg'],
    ['g / m2', 'g/m2'],
    ['pcf', 'lb/ft3'],
    [' mm ', 'mm'],
  ])('reads %s as %s', (text, symbol) => {
    expect(symbolOf(text)).toBe(symbol);
  });

  it('composes any product of units with powers and one stroke', () => {
    expect(made(3, 'kN.mm2/min').si).toBeCloseTo((3e3 * 1e-6) / 60, 15);
    expect(parseUnit('N.m2')).toMatchObject({ unit: { dimension: namedDimension('bending stiffness') } });
    expect(parseUnit('g/m2/s')).toEqual({ unknown: 'g/m2/s', nearest: ['g/m2.s'] });
  });

  it('tells millipascal from megapascal', () => {
    expect(made(1, 'MPa.s').si / made(1, 'mPa.s').si).toBeCloseTo(1e9, 0);
    expect(parseUnit('mpa')).toMatchObject({ nearest: ['MPa', 'mPa'] });
    // the key beside is likelier than a meganewton
    expect(parseUnit('mn')).toMatchObject({ nearest: ['mm', 'min'] });
  });

  it.each([
    ['oz', ['oz/yd2', 'oz/ft2', 'oz av', 'US fl oz', 'UK fl oz']],
    ['gal', ['US gal', 'UK gal']],
    ['pint', ['US pt', 'UK pt']],
    ['cup', ['US cup', 'ml']],
    ['ton', ['t', 'US ton', 'UK ton']],
    ['lb/gal', ['lb/US gal', 'lb/UK gal']],
    ['$/m2', ['USD/m2', 'CAD/m2', 'AUD/m2', 'NZD/m2']],
  ])('asks which %s is meant, and can read every answer', (text, choices) => {
    expect(parseUnit(text)).toEqual({ ambiguous: text, choices });
    for (const choice of choices) expect(parseUnit(choice)).toHaveProperty('unit');
  });

  it('decides an ounce by what is expected, but never that of a cloth', () => {
    expect(parseUnit('oz', namedDimension('areal weight'))).toEqual({ ambiguous: 'oz', choices: ['oz/yd2', 'oz/ft2'] });
    expect(parseUnit('oz', namedDimension('volume'))).toEqual({ ambiguous: 'oz', choices: ['US fl oz', 'UK fl oz'] });
    expect(makeQuantity(4, 'oz', MASS)).toMatchObject({ dimension: MASS, unit: 'oz av' });
    expect(parseUnit('oz', namedDimension('length'))).toHaveProperty('choices.length', 5);
  });

  it.each([
    ['grm/m2', 'g/m2'],
    ['gms', 'g/m2'],
    ['Kg', 'kg'],
    ['KPA', 'kPa'],
    ['inn', 'in'],
    ['milimetre', 'mm'],
    ['C', 'degC'],
    ['g/sqm', 'g/m2'],
    ['eur/m2', 'EUR/m2'],
    ['EUE', 'EUR'],
    ['degc', 'degC'],
    ['mPas', 'mPa.s'],
    ['RH', '% RH'],
    ['fahrenhiet', 'degF'],
  ])('for %s suggests %s', (text, suggestion) => {
    const read = parseUnit(text);
    expect('nearest' in read ? read.nearest : read).toContain(suggestion);
  });

  it.each(['', '/', 'x', 'm0', 'EUR/GBP', 'm..s', 'm/', '2', 'mm mm', 'constructor', '__proto__', 'm'.repeat(5000)])(
    'finds no unit in %j and does not fail',
    (text) => {
      expect(parseUnit(text)).toHaveProperty('unknown', text);
    },
  );

  it('never fails, whatever is typed', () => {
    const alike = fc.string({ unit: fc.constantFrom(...'mgKPasEUR/.^2()% °²oz'), maxLength: 9 });
    fc.assert(
      fc.property(fc.oneof(fc.string(), alike), (text) => {
        const read = parseUnit(text);
        expect(['unit', 'unknown', 'ambiguous'].filter((kind) => kind in read)).toHaveLength(1);
      }),
    );
  });

  it('has every spelling once', () => {
    const spellings = UNIT_ATOMS.flatMap((atom) => [atom.symbol, ...(atom.spellings ?? [])]);
    expect(spellings.filter((each, at) => spellings.indexOf(each) !== at || CURRENCIES.has(each))).toEqual([]);
  });

  it('reads its own symbols', () => {
    for (const unit of OFFERED) expect(symbolOf(unit.symbol)).toBe(unit.symbol);
  });
});

describe('the distance between two spellings', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abc'), maxLength: 6 });

  it('counts a swap, a letter too many, too few, another', () => {
    expect([
      editDistance('gms', 'gsm'),
      editDistance('inn', 'in'),
      editDistance('mm', 'm'),
      editDistance('cm', 'mm'),
    ]).toEqual([1, 1, 1, 1]);
    expect(editDistance('', 'abc')).toBe(3);
  });

  it('is symmetric, zero for equals alone, and no more than the longer word', () => {
    fc.assert(
      fc.property(word, word, (left, right) => {
        const distance = editDistance(left, right);
        expect(distance).toBe(editDistance(right, left));
        expect(distance === 0).toBe(left === right);
        expect(distance).toBeLessThanOrEqual(Math.max(left.length, right.length));
      }),
    );
  });
});

describe('quantities', () => {
  it.each([
    [680, 'g/m2', 0.68],
    [12, 'mm', 0.012],
    [5, 'mil', 0.000127],
    [290, 'mPa.s', 0.29],
    [12, '%', 0.12],
    [23, 'degC', 296.15],
    [95, 'kg', 95],
    [10, 'K/h', 10 / 3600],
    [34, 'EUR/h', 34 / 3600],
    [12, 'm2/L', 12000],
    [1.1e-10, 'm2', 1.1e-10],
    [2.5, 'phr', 0.025],
    [180, 'deg', Math.PI],
    [2, '', 2],
  ])('%d %s is %d in SI', (number, unit, si) => {
    expect(made(number, unit).si).toBeCloseTo(si, 14);
  });

  it('keeps points and steps of temperature apart', () => {
    expect(made(10, 'K').difference).toBe(true);
    expect(made(18, 'degF difference')).toMatchObject({ si: 10, difference: true });
    expect(made(10, 'degC')).not.toHaveProperty('difference');
    expect(made(2, 'degC/min')).not.toHaveProperty('difference');
  });

  it('keeps the currency only where there is money', () => {
    expect(made(9.8, 'EUR/m2')).toMatchObject({ currency: 'EUR', si: 9.8, unit: 'EUR/m2' });
    expect(made(2, 'EUR/EUR')).not.toHaveProperty('currency');
  });

  it.each([
    [Number('1e999'), 'mm', 'not-finite'],
    [1e308, 'GPa', 'not-finite'],
    [Number.NaN, 'mm', 'not-finite'],
    [-300, 'degC', 'below-absolute-zero'],
    [3, 'furlong', 'unknown-unit'],
    [3, 'oz', 'ambiguous-unit'],
  ])('%d %s is a problem: %s', (number, unit, problem) => {
    expect(makeQuantity(number, unit)).toMatchObject({ problem });
  });

  it('says in its messages what would be right', () => {
    const messageOf = (result: object): string => (isProblem(result) ? inWords(result.message) : '');
    expect(messageOf(makeQuantity(3, 'gal'))).toBe('gal means more than one unit: write US gal or UK gal');
    expect(messageOf(makeQuantity(3, 'grm/m2'))).toBe('grm/m2 is not a unit known here; g/m2 may be meant');
    expect(messageOf(makeQuantity(-500, 'degF'))).toBe('-500 degF is below absolute zero (-459.67 degF)');
    expect(messageOf(convert(made(3, 'mm'), 'kg'))).toBe('a length cannot be shown in kg, the unit of a mass');
    expect(convert(made(3, 'EUR'), 'GBP')).toHaveProperty('problem', 'wrong-dimension');
    expect(convert(made(3, 'K'), 'degC')).toHaveProperty('problem', 'wrong-dimension');
  });

  it('come back from SI as they were typed, in every unit', () => {
    const number = fc
      .tuple(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: 0, max: 4 }))
      .map(([digits, places]) => Number(`${digits}e-${places}`));
    fc.assert(
      fc.property(fc.constantFrom(...OFFERED), number, (unit, value) => {
        const quantity = makeQuantity(value, unit.symbol);
        if (isProblem(quantity)) {
          expect(quantity.problem).toBe('below-absolute-zero');
          return;
        }
        const back = convert(quantity, unit.symbol);
        if (isProblem(back)) throw new Error(inWords(back.message));
        // a temperature loses the digits of its offset
        const allowed = Math.max(Math.abs(value) * 1e-14, unit.offset === undefined ? 0 : 1e-12);
        expect(Math.abs(back.value - value)).toBeLessThanOrEqual(allowed);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('names of dimensions', () => {
  it.each([
    ['mm', 'a length'],
    ['g/m2', 'an areal weight'],
    ['EUR/m2', 'a price per area'],
    ['EUR/each', 'a price per piece'],
    ['K', 'a temperature difference'],
    ['degF', 'a temperature'],
    ['K/min', 'a temperature rate'],
    ['%', 'a percentage'],
    ['m2/kg', 'a coverage'],
    ['kg/m4', 'a quantity in kg/m4'],
    ['', 'a bare number'],
    ['mbar/min', 'a leak rate'],
  ])('%s is %s', (unit, name) => {
    expect(inWords(describeQuantity(made(1, unit)))).toBe(name);
  });

  it('can be asked for by name where two share a dimension', () => {
    expect(describeDimension('permeability')).toBe('a permeability');
    expect(describeDimension(namedDimension('permeability'))).toBe('an area');
  });

  it('offers only units that fit, usual ones first, and at least one for each name but a bare number', () => {
    for (const { name, dimension: of, units } of NAMED) {
      const offered = unitsOf(name);
      expect([name, offered.length]).toEqual([name, units === '' ? 0 : units.split(', ').length]);
      for (const unit of offered) expect(sameDimension(unit.dimension, of)).toBe(true);
    }
    expect(unitsOf('areal weight').map((unit) => unit.symbol)).toEqual(['g/m2', 'kg/m2', 'oz/yd2', 'oz/ft2', 'lb/ft2']);
    expect(unitsOf('price per area', 'GBP')[0]?.symbol).toBe('GBP/m2');
    expect(unitsOf('temperature difference').every((unit) => unit.difference)).toBe(true);
  });

  it('composes units for any dimension that can be read again', () => {
    const power = fc.integer({ min: -4, max: 4 });
    const any = fc.record({ length: power, mass: power, time: power, temperature: power, angle: power, money: power });
    fc.assert(
      fc.property(any, (exponents) => {
        const of = dimension(exponents);
        const symbol = composedSymbol(of, 'EUR');
        fc.pre(symbol !== '');
        const read = parseUnit(symbol);
        if (!('unit' in read)) throw new Error(`${symbol} is no unit`);
        expect([sameDimension(read.unit.dimension, of), read.unit.up, read.unit.down]).toEqual([true, 1, 1]);
      }),
    );
  });
});

describe('currencies', () => {
  it('are known to the platform (its ICU data), all but the newest of Venezuela', () => {
    const known = new Set(Intl.supportedValuesOf('currency'));
    expect([...CURRENCIES].filter((code) => !known.has(code) && code !== 'VED')).toEqual([]);
  });
});

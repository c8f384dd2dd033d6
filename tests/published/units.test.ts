/**
 * Factors to SI against NIST Special Publication 811 (2008), "Guide for the Use of the International System of Units",
 * Appendix B.8, "Factors for units listed alphabetically": seven digits as printed there, under its own names.
 * Checked against two independent transcriptions of that table; those marked * are from memory.
 */
import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../calc/quantity/index.ts';
import { convert, isProblem, makeQuantity, parseUnit } from '../../calc/quantity/index.ts';
import { inWords } from '../harness/words.ts';

const APPENDIX_B8: readonly (readonly [unit: string, entry: string, factor: number])[] = [
  ['in', 'inch (in)', 2.54e-2],
  ['ft', 'foot (ft)', 3.048e-1],
  ['yd', 'yard (yd)', 9.144e-1],
  ['mil', 'mil (0.001 in)', 2.54e-5],
  ['um', 'micron', 1.0e-6],
  ['in2', 'square inch (in2) *', 6.4516e-4],
  ['ft2', 'square foot (ft2) *', 9.290304e-2],
  ['yd2', 'square yard (yd2) *', 8.361274e-1],
  ['in3', 'cubic inch (in3) *', 1.638706e-5],
  ['ft3', 'cubic foot (ft3) *', 2.831685e-2],
  ['lb', 'pound (avoirdupois) (lb)', 4.535924e-1],
  ['oz av', 'ounce (avoirdupois) (oz)', 2.834952e-2],
  ['US ton', 'ton, short (2000 lb)', 9.071847e2],
  ['UK ton', 'ton, long (2240 lb)', 1.016047e3],
  ['t', 'tonne (t)', 1.0e3],
  ['oz/yd2', 'ounce (avoirdupois) per square yard (oz/yd2)', 3.390575e-2],
  ['oz/ft2', 'ounce (avoirdupois) per square foot (oz/ft2)', 3.051517e-1],
  ['lb/ft2', 'pound per square foot (lb/ft2)', 4.882428],
  ['lb/ft3', 'pound per cubic foot (lb/ft3)', 1.601846e1],
  ['lb/in3', 'pound per cubic inch (lb/in3)', 2.76799e4],
  ['lb/US gal', 'pound per gallon (U.S.) (lb/gal)', 1.198264e2],
  ['lb/UK gal', 'pound per gallon [Canadian and U.K. (Imperial)] (lb/gal)', 9.977637e1],
  ['lb/ft', 'pound per foot (lb/ft)', 1.488164],
  ['lb/min', 'pound per minute (lb/min)', 7.559873e-3],
  ['tex', 'tex', 1.0e-6],
  ['den', 'denier', 1.111111e-7],
  ['US gal', 'gallon (U.S.) (gal)', 3.785412e-3],
  ['UK gal', 'gallon [Canadian and U.K. (Imperial)] (gal)', 4.54609e-3],
  ['US qt', 'quart (U.S. liquid) (liq qt)', 9.463529e-4],
  ['US pt', 'pint (U.S. liquid) (liq pt)', 4.731765e-4],
  ['US cup', 'cup (U.S.)', 2.365882e-4],
  ['US fl oz', 'fluid ounce (U.S.) (fl oz)', 2.957353e-5],
  ['UK fl oz', 'ounce [Canadian and U.K. fluid (Imperial)] (fl oz)', 2.841306e-5],
  ['L', 'liter (L)', 1.0e-3],
  ['lbf', 'pound-force (lbf)', 4.448222],
  ['kgf', 'kilogram-force (kgf)', 9.80665],
  ['lbf.ft', 'pound-force foot (lbf.ft)', 1.355818],
  ['lbf/in', 'pound-force per inch (lbf/in)', 1.751268e2],
  ['lbf/ft', 'pound-force per foot (lbf/ft)', 1.45939e1],
  ['lbf/ft2', 'pound-force per square foot (lbf/ft2)', 4.788026e1],
  ['psi', 'psi (pound-force per square inch) (lbf/in2)', 6.894757e3],
  ['lbf/in2', 'pound-force per square inch (psi) (lbf/in2)', 6.894757e3],
  ['ksi', 'ksi (1000 lbf/in2) *', 6.894757e6],
  ['inHg', 'inch of mercury, conventional (inHg)', 3.386389e3],
  ['mmHg', 'millimeter of mercury, conventional (mmHg)', 1.333224e2],
  ['torr', 'torr (Torr) *', 1.333224e2],
  ['mbar', 'millibar (mbar)', 1.0e2],
  ['atm', 'atmosphere, standard (atm) *', 1.01325e5],
  ['cP', 'centipoise (cP)', 1.0e-3],
  ['P', 'poise (P)', 1.0e-1],
  ['darcy', 'darcy', 9.869233e-13],
  ['deg', 'degree (angle) *', 1.745329e-2],
  ['days', 'day (d) *', 8.64e4],
  ['years', 'year (365 days)', 3.1536e7],
  ['kWh', 'kilowatt hour (kW.h) *', 3.6e6],
  ['degF difference', 'degree Fahrenheit (temperature interval) *', 5.555556e-1],
];

function made(number: number, unit: string): Quantity {
  const quantity = makeQuantity(number, unit);
  if (isProblem(quantity)) throw new Error(inWords(quantity.message));
  return quantity;
}

function converted(number: number, unit: string, into: string): number {
  const result = convert(made(number, unit), into);
  if (isProblem(result)) throw new Error(inWords(result.message));
  return result.value;
}

describe('NIST SP 811 (2008), Appendix B.8', () => {
  it.each(APPENDIX_B8)('%s: %s is %d in SI', (unit, _entry, factor) => {
    // half of the seventh digit, as the table rounds
    expect(Math.abs(made(1, unit).si / factor - 1)).toBeLessThanOrEqual(5.01e-7);
  });

  it('prints exact factors exactly here too', () => {
    const exactly = { in: 0.0254, ft: 0.3048, yd: 0.9144, mil: 2.54e-5, lb: 0.45359237, L: 0.001 };
    for (const [unit, exact] of Object.entries(exactly)) {
      expect(made(1, unit).si).toBe(exact);
    }
  });
});

describe('temperatures: SP 811 Appendix B.8, t/degC = (t/degF - 32)/1.8 and T/K = t/degC + 273.15', () => {
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [98.6, 37],
    [-459.67, -273.15],
    [140, 60],
    [250, 121.1111111],
  ])('%d degF is %d degC', (fahrenheit, celsius) => {
    expect(converted(fahrenheit, 'degF', 'degC')).toBeCloseTo(celsius, 6);
    expect(converted(celsius, 'degC', 'degF')).toBeCloseTo(fahrenheit, 6);
  });

  it('intervals have no offset', () => {
    expect(made(9, 'degF/min').si).toBeCloseTo(made(5, 'K/min').si, 15);
    expect(made(5, 'degC/min').si).toBe(made(5, 'K/min').si);
  });
});

describe('roll widths and mat weights of the US trade', () => {
  // unit definitions; the rounding of mat to 225, 300, 450 g/m2 is common practice
  it.each([
    [50, 'in', 'm', 1.27],
    [60, 'in', 'm', 1.524],
    [0.75, 'oz/ft2', 'kg/m2', 0.229],
    [1, 'oz/ft2', 'kg/m2', 0.305],
    [1.5, 'oz/ft2', 'kg/m2', 0.458],
    [4, 'oz/yd2', 'kg/m2', 0.1356],
    [6, 'oz/yd2', 'kg/m2', 0.2034],
    [10, 'oz/yd2', 'kg/m2', 0.3391],
  ] as const)('%d %s in %s is %d', (number, unit, into, expected) => {
    expect(Math.abs(converted(number, unit, into) / expected - 1)).toBeLessThanOrEqual(0.002);
  });

  it('an ounce per square foot is nine per square yard, so a bare ounce is refused', () => {
    expect(converted(1, 'oz/ft2', 'oz/yd2')).toBeCloseTo(9, 12);
    expect(converted(1, 'oz/yd2', 'g/m2')).toBeCloseTo(33.90575, 5);
    expect(converted(1, 'oz/ft2', 'g/m2')).toBeCloseTo(305.1517, 4);
    expect(parseUnit('oz')).toHaveProperty('ambiguous');
  });

  it('a core of 5 lb/ft3 has 80 kg/m3', () => {
    expect(converted(5, 'lb/ft3', 'kg/m3')).toBeCloseTo(80.0923, 3);
  });
});

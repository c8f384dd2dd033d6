import {
  ANGLE,
  AREA,
  dimension,
  ENERGY,
  FORCE,
  LENGTH,
  MASS,
  NUMBER,
  POWER,
  PRESSURE,
  TEMPERATURE,
  TIME,
  VISCOSITY,
  VOLUME,
} from './dimension.ts';
import type { Dimension, MeasureSystem } from './types.ts';

/**
 * The table of units: the atoms of which every unit is composed. A value in SI is `number * up / down + offset`, with
 * `up` and `down` exact wherever there is an exact definition: inch 25.4 mm, pound 0.453 592 37 kg, US gallon 231 in3.
 *
 * Source of each factor: NIST Special Publication 811 (2008): `B8` its Appendix B.8 (factors for units listed
 * alphabetically), `T3` Table 3 (derived units with names of their own), `T5` Table 5 (prefixes), `T6` Table 6 (units
 * accepted for use with the SI).
 */
export interface UnitAtom {
  /** standard spelling, as shown */
  readonly symbol: string;
  /** other spellings that are read; case counts everywhere, since `mPa` and `MPa` differ by 1e9 */
  readonly spellings?: readonly string[];
  readonly dimension: Dimension;
  readonly up: number;
  readonly down: number;
  readonly offset?: number;
  readonly system?: MeasureSystem;
  readonly source: string;
}

type Row = readonly [
  symbol: string,
  spellings: string,
  up: number,
  down: number,
  system: MeasureSystem | 'any',
  source: string,
  offset?: number,
];

// exact: 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s2 (SP 811 B8 "pound", "standard acceleration")
const POUND_FORCE = 4.4482216152605;
// square inch in m2
const SQUARE_INCH = 0.00064516;
// 231 cubic inches, in 1e-12 m3
const US_GALLON = 3785411784;

const LENGTHS: readonly Row[] = [
  ['mm', 'millimetre millimetres', 1, 1e3, 'si', 'T5'],
  ['cm', 'centimetre centimetres', 1, 1e2, 'si', 'T5'],
  ['m', 'metre metres', 1, 1, 'si', 'T5'],
  ['km', '', 1e3, 1, 'si', 'T5'],
  ['um', 'micron microns', 1, 1e6, 'si', 'T5'],
  ['nm', '', 1, 1e9, 'si', 'T5'],
  ['in', 'inch inches', 127, 5000, 'us', 'B8 inch'],
  ['ft', 'foot feet', 381, 1250, 'us', 'B8 foot'],
  ['yd', 'yard yards', 1143, 1250, 'us', 'B8 yard'],
  ['mil', 'mils thou', 127, 5e6, 'us', 'B8 mil'],
];

const MASSES: readonly Row[] = [
  ['kg', '', 1, 1, 'si', 'T5'],
  ['g', 'gram grams', 1, 1e3, 'si', 'T5'],
  ['mg', '', 1, 1e6, 'si', 'T5'],
  ['t', 'tonne tonnes', 1e3, 1, 'si', 'T6'],
  ['lb', 'lbs pound pounds', 45359237, 1e8, 'us', 'B8 pound (avoirdupois)'],
  ['oz', '', 45359237, 16e8, 'us', 'B8 ounce (avoirdupois)'],
  ['US ton', '', 2000 * 45359237, 1e8, 'us', 'B8 ton, short'],
  ['UK ton', '', 2240 * 45359237, 1e8, 'us', 'B8 ton, long'],
];

const TIMES: readonly Row[] = [
  ['s', 'sec second seconds', 1, 1, 'any', 'T5'],
  ['min', 'mins minute minutes', 60, 1, 'any', 'T6'],
  ['h', 'hr hrs hour hours', 3600, 1, 'any', 'T6'],
  ['d', 'day days', 86400, 1, 'any', 'T6'],
  ['weeks', 'week', 7 * 86400, 1, 'any', 'T6 day'],
  // a shelf life, not a calendar: the twelfth part of 365 days
  ['months', 'month', 365 * 7200, 1, 'any', 'B8 year (365 d)'],
  ['years', 'year', 365 * 86400, 1, 'any', 'B8 year (365 d)'],
];

const ANGLES: readonly Row[] = [
  ['deg', 'degree degrees', Math.PI, 180, 'any', 'B8 degree (angle)'],
  ['rad', '', 1, 1, 'any', 'T3'],
];

/** Alone, degC and degF are points of a scale; in a compound (`degC/min`) they are steps of it. */
const TEMPERATURES: readonly Row[] = [
  ['degC', 'celsius', 1, 1, 'si', 'B8 degree Celsius', 273.15],
  ['K', 'kelvin', 1, 1, 'si', 'T5'],
  ['degF', 'fahrenheit', 5, 9, 'us', 'B8 degree Fahrenheit', 273.15 - 160 / 9],
  ['degF difference', '', 5, 9, 'us', 'B8 degree Fahrenheit (temperature interval)'],
];

const VOLUMES: readonly Row[] = [
  ['L', 'l litre litres', 1, 1e3, 'si', 'T6'],
  ['ml', 'mL cc', 1, 1e6, 'si', 'T6'],
  ['cl', 'cL', 1, 1e5, 'si', 'T6'],
  ['US gal', '', US_GALLON, 1e12, 'us', 'B8 gallon (U.S.)'],
  ['US qt', '', US_GALLON, 4e12, 'us', 'B8 quart (U.S. liquid)'],
  ['US pt', '', US_GALLON, 8e12, 'us', 'B8 pint (U.S. liquid)'],
  ['US cup', '', US_GALLON, 16e12, 'us', 'B8 cup (U.S.)'],
  ['US fl oz', '', US_GALLON, 128e12, 'us', 'B8 fluid ounce (U.S.)'],
  ['UK gal', '', 4.54609, 1e3, 'us', 'B8 gallon [Canadian and U.K. (Imperial)]'],
  ['UK pt', '', 4.54609, 8e3, 'us', 'B8 gallon [Canadian and U.K. (Imperial)]'],
  ['UK fl oz', '', 4.54609, 160e3, 'us', 'B8 ounce [Canadian and U.K. fluid (Imperial)]'],
];

const FORCES: readonly Row[] = [
  ['N', 'newton newtons', 1, 1, 'si', 'T3'],
  ['kN', '', 1e3, 1, 'si', 'T5'],
  ['MN', '', 1e6, 1, 'si', 'T5'],
  ['kgf', '', 9.80665, 1, 'si', 'B8 kilogram-force'],
  ['lbf', '', POUND_FORCE, 1, 'us', 'B8 pound-force'],
];

const PRESSURES: readonly Row[] = [
  ['mbar', 'millibar', 100, 1, 'si', 'B8 millibar'],
  ['bar', '', 1e5, 1, 'si', 'B8 bar'],
  ['Pa', 'pascal', 1, 1, 'si', 'T3'],
  ['hPa', '', 100, 1, 'si', 'T5'],
  ['kPa', '', 1e3, 1, 'si', 'T5'],
  ['MPa', '', 1e6, 1, 'si', 'T5'],
  ['GPa', '', 1e9, 1, 'si', 'T5'],
  ['mPa', '', 1, 1e3, 'si', 'T5'],
  ['torr', 'Torr', 101325, 760, 'any', 'B8 torr'],
  ['mmHg', '', 133.3224, 1, 'any', 'B8 millimeter of mercury, conventional'],
  ['atm', '', 101325, 1, 'any', 'B8 atmosphere, standard'],
  ['inHg', '', 3386.389, 1, 'us', 'B8 inch of mercury, conventional'],
  ['psi', '', POUND_FORCE, SQUARE_INCH, 'us', 'B8 psi'],
  ['ksi', '', POUND_FORCE * 1e3, SQUARE_INCH, 'us', 'B8 ksi'],
  ['Msi', 'msi', POUND_FORCE * 1e6, SQUARE_INCH, 'us', 'B8 psi'],
];

const VISCOSITIES: readonly Row[] = [
  ['cP', 'cps cPs centipoise', 1, 1e3, 'us', 'B8 centipoise'],
  ['P', 'poise', 1, 10, 'us', 'B8 poise'],
];

const ENERGIES: readonly Row[] = [
  ['J', '', 1, 1, 'si', 'T3'],
  ['kJ', '', 1e3, 1, 'si', 'T5'],
  ['MJ', '', 1e6, 1, 'si', 'T5'],
  ['Wh', '', 3600, 1, 'si', 'B8 watt hour'],
  ['kWh', '', 3600e3, 1, 'si', 'B8 kilowatt hour'],
];

const POWERS: readonly Row[] = [
  ['W', 'watt watts', 1, 1, 'si', 'T3'],
  ['kW', '', 1e3, 1, 'si', 'T5'],
];

const NUMBERS: readonly Row[] = [
  ['%', 'percent', 1, 100, 'any', 'SP 811 section 7.10.2'],
  ['phr', '', 1, 100, 'any', 'trade: parts per hundred of resin'],
  ['ppm', '', 1, 1e6, 'any', 'SP 811 section 7.10.3'],
  ['each', 'ea piece pc', 1, 1, 'any', 'trade: price of one'],
];

const rows = (of: Dimension, table: readonly Row[]): UnitAtom[] =>
  table.map(([symbol, spellings, up, down, system, source, offset]) => ({
    symbol,
    spellings: spellings.split(' ').filter((word) => word !== ''),
    dimension: of,
    up,
    down,
    source,
    ...(system === 'any' ? {} : { system }),
    ...(offset === undefined ? {} : { offset }),
  }));

export const UNIT_ATOMS: readonly UnitAtom[] = [
  ...rows(LENGTH, LENGTHS),
  ...rows(MASS, MASSES),
  ...rows(TIME, TIMES),
  ...rows(ANGLE, ANGLES),
  ...rows(TEMPERATURE, TEMPERATURES),
  ...rows(VOLUME, VOLUMES),
  ...rows(FORCE, FORCES),
  ...rows(PRESSURE, PRESSURES),
  ...rows(VISCOSITY, VISCOSITIES),
  ...rows(ENERGY, ENERGIES),
  ...rows(POWER, POWERS),
  ...rows(NUMBER, NUMBERS),
  ...rows(AREA, [['darcy', '', 9.869233e-13, 1, 'any', 'B8 darcy']]),
  ...rows(dimension({ mass: 1, length: -1 }), [
    ['tex', '', 1, 1e6, 'si', 'B8 tex'],
    ['den', 'denier', 1, 9e6, 'us', 'B8 denier'],
  ]),
  ...rows(dimension({ time: -1 }), [['Hz', '', 1, 1, 'any', 'T3']]),
];

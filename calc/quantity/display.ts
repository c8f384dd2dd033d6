import * as d from './dimension.ts';
import { dimensionKey } from './dimension.ts';
import { namedDimension } from './names.ts';
import type { Dimension, DimensionName, MeasureSystem } from './types.ts';

/** Below `below` (SI, absolute value) show in `unit`, with so many significant digits. */
export interface DisplayStep {
  readonly unit: string;
  readonly below: number;
  readonly digits: number;
}

interface Display {
  readonly si: readonly DisplayStep[];
  readonly us: readonly DisplayStep[];
}

/** "unit<limit, unit<limit, unit", limits in SI; `unit:4` shows four digits in place of three. */
function steps(text: string): readonly DisplayStep[] {
  return text.split(', ').map((part) => {
    const [unit = '', limit] = part.split('<');
    const [symbol = '', digits] = unit.split(':');
    return { unit: symbol, below: limit === undefined ? Infinity : Number(limit), digits: Number(digits ?? 3) };
  });
}

const HOUR = 3600;
const DAY = 86400;
const TIMES = `s<120, min<${3 * HOUR}, h<${3 * DAY}, days<${120 * DAY}, months`;

/** What the trade would write (common practice), by magnitude. ¤ stands for the currency. */
const DISPLAYS: readonly (readonly [Dimension | DimensionName, string, string])[] = [
  [d.LENGTH, 'um<1e-4, mm<10, m:4', 'mil<1.27e-3, in<3.048, ft:4'],
  [d.AREA, 'm2<1e-8, mm2<1e-4, cm2<1e-2, m2', 'm2<1e-8, in2<0.0929, ft2'],
  [d.VOLUME, 'ml<1e-3, L<1, m3', 'US fl oz<9.4e-4, US qt<3.7854e-3, US gal'],
  [d.MASS, 'mg<1e-4, g<1, kg:4<1e4, t:4', 'oz av<0.4535, lb:4'],
  [d.TIME, TIMES, TIMES],
  [d.ANGLE, 'deg', 'deg'],
  [d.TEMPERATURE, 'degC', 'degF'],
  [d.FORCE, 'N<1e4, kN', 'lbf'],
  [d.PRESSURE, 'Pa<1, mbar<110000, MPa<1e9, GPa', 'inHg<110000, psi<6.895e6, ksi<3.447e9, Msi'],
  ['speed', 'mm/min<1e-3, mm/s<1, m/s', 'in/min<0.0254, in/s<1, ft/s'],
  [d.AREAL_WEIGHT, 'g/m2<10, kg/m2', 'oz/yd2<4.88, lb/ft2'],
  [d.DENSITY, 'kg/m3<500, g/cm3', 'lb/ft3'],
  ['linear density', 'tex<0.01, g/m<1, kg/m', 'lb/ft'],
  ['coverage', 'm2/kg', 'ft2/lb'],
  ['coverage by volume', 'm2/L', 'ft2/US gal'],
  ['ramp', 'K/h<0.00833, K/min', 'degF/h<0.00833, degF/min'],
  ['thermal expansion', '/K', '/degF'],
  [d.VISCOSITY, 'mPa.s<100, Pa.s', 'cP<100, P'],
  ['flow rate', 'ml/min<1.6e-5, L/min', 'US fl oz/min<6.3e-5, US gal/min'],
  ['mass flow', 'g/min<0.0166, kg/min', 'lb/min'],
  ['leak rate', 'mbar/min', 'inHg/min'],
  ['work rate', 'mm2/s<1e-5, m2/h', 'in2/s<1e-5, ft2/h'],
  [d.ENERGY, 'J<1e3, kJ<1e6, MJ', 'J<1e3, kJ<1e6, MJ'],
  [d.POWER, 'W<1e3, kW', 'W<1e3, kW'],
  ['heat of reaction', 'kJ/kg', 'kJ/kg'],
  ['specific heat', 'kJ/kg.K', 'kJ/kg.K'],
  ['thermal conductivity', 'W/m.K', 'W/m.K'],
  ['heat transfer', 'W/m2.K', 'W/m2.K'],
  ['frequency', '/h<0.0166, /min<1, Hz', '/h<0.0166, /min<1, Hz'],
  ['second moment of area', 'mm4<1e-8, cm4', 'in4'],
  ['bending stiffness', 'N.m2', 'lbf.in2'],
  ['line load', 'N/m<1e3, N/mm', 'lbf/in'],
  [d.MONEY, '¤', '¤'],
  ['wage', '¤/h', '¤/h'],
  ['price per area', '¤/m2', '¤/yd2'],
  ['price per length', '¤/m', '¤/yd'],
  ['price per mass', '¤/kg', '¤/lb'],
  ['price per volume', '¤/L', '¤/US gal'],
];

const BY_KEY: ReadonlyMap<string, Display> = new Map(
  DISPLAYS.map(([of, si, us]) => [
    dimensionKey(typeof of === 'string' ? namedDimension(of) : of),
    { si: steps(si), us: steps(us) },
  ]),
);

const DIFFERENCE: Display = { si: steps('K'), us: steps('degF difference') };

/** Zero is shown in the unit of the middle of things, not in the smallest. */
const COMMON_SIZE = 0.05;

/** The trade's unit for a value; undefined where a dimension has none. */
export function displayStep(
  of: Dimension,
  si: number,
  system: MeasureSystem,
  isDifference: boolean,
): DisplayStep | undefined {
  const display = isDifference ? DIFFERENCE : BY_KEY.get(dimensionKey(of));
  const size = si === 0 ? COMMON_SIZE : Math.abs(si);
  return display?.[system].find((step) => size < step.below);
}

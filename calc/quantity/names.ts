import { text, type Words } from '../figure/figure.ts';
import * as d from './dimension.ts';
import { dimension, dimensionKey } from './dimension.ts';
import type { Dimension, DimensionName, Quantity } from './types.ts';

interface Named {
  readonly name: DimensionName;
  /** with its article, for sentences */
  readonly spoken: string;
  readonly dimension: Dimension;
  /** units of the trade, usual ones first, SI before US customary; ¤ stands for the currency */
  readonly units: string;
}

const row = (name: DimensionName, spoken: string, of: Dimension, units: string): Named => ({
  name,
  spoken,
  dimension: of,
  units,
});
const per = (of: Dimension, by: Dimension): Dimension => d.timesPower(of, by, -1);
const perKelvin = (of: Dimension): Dimension => per(of, d.TEMPERATURE);

/** What people call a dimension. Of two names for one dimension the first is told, unless the other is asked for. */
export const NAMED: readonly Named[] = [
  row('number', 'a bare number', d.NUMBER, ''),
  row('ratio', 'a ratio', d.NUMBER, '%, phr'),
  row('length', 'a length', d.LENGTH, 'mm, m, um, cm, in, ft, mil, yd'),
  row('area', 'an area', d.AREA, 'm2, cm2, mm2, ft2, yd2, in2'),
  row('permeability', 'a permeability', d.AREA, 'm2, darcy'),
  row('volume', 'a volume', d.VOLUME, 'L, ml, cm3, m3, US gal, US qt, US fl oz, in3, ft3, UK gal'),
  row('mass', 'a mass', d.MASS, 'kg, g, t, lb, oz av'),
  row('time', 'a time', d.TIME, 'min, h, s, days, weeks, months'),
  row('angle', 'an angle', d.ANGLE, 'deg, rad'),
  row('force', 'a force', d.FORCE, 'N, kN, kgf, lbf'),
  row('pressure', 'a pressure', d.PRESSURE, 'mbar, bar, Pa, kPa, MPa, GPa, torr, inHg, psi, ksi, Msi'),
  row('speed', 'a speed', dimension({ length: 1, time: -1 }), 'mm/s, mm/min, m/min, m/s, in/min, ft/min'),
  row('areal weight', 'an areal weight', d.AREAL_WEIGHT, 'g/m2, kg/m2, oz/yd2, oz/ft2, lb/ft2'),
  row('density', 'a density', d.DENSITY, 'g/cm3, kg/m3, kg/L, lb/ft3, lb/US gal'),
  row('linear density', 'a linear density', per(d.MASS, d.LENGTH), 'tex, g/m, kg/m, lb/ft, den'),
  row('coverage', 'a coverage', per(d.AREA, d.MASS), 'm2/kg, ft2/lb'),
  row('coverage by volume', 'a coverage by volume', per(d.AREA, d.VOLUME), 'm2/L, ft2/US gal'),
  row('temperature', 'a temperature', d.TEMPERATURE, 'degC, degF'),
  row('temperature difference', 'a temperature difference', d.TEMPERATURE, 'K, degF difference'),
  row('ramp', 'a temperature rate', per(d.TEMPERATURE, d.TIME), 'K/min, K/h, degF/min, degF/h'),
  row('thermal expansion', 'a thermal expansion', perKelvin(d.NUMBER), '/K, um/m.K, /degF'),
  row('viscosity', 'a viscosity', d.VISCOSITY, 'mPa.s, Pa.s, cP, P'),
  row('flow rate', 'a flow rate', per(d.VOLUME, d.TIME), 'L/min, ml/min, m3/h, US gal/min'),
  row('mass flow', 'a mass flow', per(d.MASS, d.TIME), 'g/min, kg/min, kg/h, lb/min'),
  row('leak rate', 'a leak rate', per(d.PRESSURE, d.TIME), 'mbar/min, Pa/s, inHg/min'),
  row('work rate', 'a rate of work', per(d.AREA, d.TIME), 'm2/h, m2/min, ft2/h, yd2/h'),
  row('diffusivity', 'a diffusivity', per(d.AREA, d.TIME), 'mm2/s, m2/s'),
  row('energy', 'an energy', d.ENERGY, 'J, kJ, kWh, N.m, lbf.ft'),
  row('power', 'a power', d.POWER, 'W, kW'),
  row('heat of reaction', 'a heat of reaction', per(d.ENERGY, d.MASS), 'kJ/kg, J/g'),
  row('specific heat', 'a specific heat', perKelvin(per(d.ENERGY, d.MASS)), 'kJ/kg.K, J/kg.K, J/g.K'),
  row('thermal conductivity', 'a thermal conductivity', perKelvin(per(d.POWER, d.LENGTH)), 'W/m.K'),
  row('heat transfer', 'a heat transfer coefficient', perKelvin(per(d.POWER, d.AREA)), 'W/m2.K'),
  row('frequency', 'a frequency', per(d.NUMBER, d.TIME), 'Hz, /min, /h'),
  row('second moment of area', 'a second moment of area', dimension({ length: 4 }), 'mm4, cm4, in4'),
  row('bending stiffness', 'a bending stiffness', d.timesPower(d.FORCE, d.LENGTH, 2), 'N.m2, N.mm2, lbf.in2'),
  row('line load', 'a line load', per(d.FORCE, d.LENGTH), 'N/m, N/mm, kN/m, lbf/in, lbf/ft'),
  row('money', 'an amount of money', d.MONEY, '¤'),
  row('price per piece', 'a price per piece', d.MONEY, '¤/each'),
  row('wage', 'a wage', per(d.MONEY, d.TIME), '¤/h, ¤/min'),
  row('price per area', 'a price per area', per(d.MONEY, d.AREA), '¤/m2, ¤/yd2, ¤/ft2'),
  row('price per length', 'a price per length', per(d.MONEY, d.LENGTH), '¤/m, ¤/ft, ¤/yd'),
  row('price per mass', 'a price per mass', per(d.MONEY, d.MASS), '¤/kg, ¤/lb'),
  row('price per volume', 'a price per volume', per(d.MONEY, d.VOLUME), '¤/L, ¤/US gal'),
];

const BY_NAME: ReadonlyMap<DimensionName, Named> = new Map(NAMED.map((named) => [named.name, named]));
const BY_DIMENSION: ReadonlyMap<string, Named> = new Map(
  NAMED.toReversed().map((named) => [dimensionKey(named.dimension), named]),
);

export function namedDimension(name: DimensionName): Dimension {
  return BY_NAME.get(name)?.dimension ?? d.NUMBER;
}

/** What most people would call it; undefined for a compound without a name. */
export function nameOfDimension(of: Dimension): DimensionName | undefined {
  return BY_DIMENSION.get(dimensionKey(of))?.name;
}

/** "a length", "an areal weight", "a price per area"; where there is no name, the units: "a quantity in kg/m4". */
export function describeDimension(of: Dimension | DimensionName): Words {
  if (typeof of === 'string') return BY_NAME.get(of)?.spoken ?? of;
  return BY_DIMENSION.get(dimensionKey(of))?.spoken ?? text('a quantity in {units}', { units: composedSymbol(of) });
}

export function describeQuantity(quantity: Quantity): Words {
  if (quantity.difference === true) return describeDimension('temperature difference');
  if (quantity.unit?.endsWith('/each') === true) return describeDimension('price per piece');
  if (quantity.unit === '%') return 'a percentage';
  return describeDimension(quantity.unit === 'phr' ? 'ratio' : quantity.dimension);
}

/** Unit texts of the trade for a dimension, usual ones first; of a dimension by name, those of that name alone. */
export function usualUnitTexts(of: Dimension | DimensionName, currency: string): readonly string[] {
  const named = typeof of === 'string' ? BY_NAME.get(of) : BY_DIMENSION.get(dimensionKey(of));
  const list = named?.units ?? (typeof of === 'string' ? '' : composedSymbol(of, currency));
  return list === '' ? [] : list.replaceAll('¤', currency).split(', ');
}

/** SI base units: "kg/m.s2". */
export function composedSymbol(of: Dimension, currency = 'money'): string {
  const bases: readonly (readonly [string, number])[] = [
    [currency, of.money],
    ['kg', of.mass],
    ['m', of.length],
    ['K', of.temperature],
    ['rad', of.angle],
    ['s', of.time],
  ];
  const side = (sign: 1 | -1): string =>
    bases
      .filter(([, power]) => power * sign > 0)
      .map(([symbol, power]) => (Math.abs(power) === 1 ? symbol : `${symbol}${Math.abs(power)}`))
      .join('.');
  return side(-1) === '' ? side(1) : `${side(1)}/${side(-1)}`;
}

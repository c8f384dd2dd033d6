import { quantity } from '../../../calc/figure/figure.ts';
import {
  AREAL_WEIGHT,
  dimension,
  formatQuantity,
  LENGTH,
  MASS,
  NUMBER,
  PRESSURE,
  type Quantity,
  TEMPERATURE,
  TIME,
  VISCOSITY,
} from '../../../calc/quantity/index.ts';

/* Numbers of a finding with their dimension, so that the reader's unit system shows them. SI in, as everywhere. */
export const seconds = (si: number): Quantity => quantity(si, TIME);
export const metres = (si: number): Quantity => quantity(si, LENGTH);
export const kilograms = (si: number): Quantity => quantity(si, MASS);
export const kelvin = (si: number): Quantity => quantity(si, TEMPERATURE);
export const kelvinDifference = (si: number): Quantity => ({ si, dimension: TEMPERATURE, difference: true });
export const pascals = (si: number): Quantity => quantity(si, PRESSURE);
export const arealWeight = (si: number): Quantity => quantity(si, AREAL_WEIGHT);
export const viscosity = (si: number): Quantity => quantity(si, VISCOSITY);
export const ramp = (si: number): Quantity => quantity(si, dimension({ temperature: 1, time: -1 }));
/** A ratio, shown in per cent. */
export const share = (si: number): Quantity => ({ si, dimension: NUMBER, unit: '%' });

/** Two digits are all that such a reckoning bears. */
export const about = (value: number): number => Number(value.toPrecision(2));

/** A time as it is spoken of: whole minutes, hours with one digit while they are few. */
export function aboutTime(si: number): Quantity {
  const unit = si >= 7200 ? 3600 : si >= 60 ? 60 : 1;
  const digits = si / unit < 10 ? 10 : 1;
  return seconds((Math.round((si / unit) * digits) / digits) * unit);
}

/** As it is typed in a recipe, for the text of a quick fix. */
export const asTyped = (value: Quantity): string => formatQuantity(value, { system: 'si' });

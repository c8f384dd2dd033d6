/**
 * The plain shapes of the quantity calculus: numbers that know what they measure. Everything inside is SI
 * (m, kg, s, K, rad, money in the currency named beside it); units exist where people read and write only.
 */

import type { Words } from '../figure/figure.ts';

/**
 * Exponents of the base dimensions, `g/m2` is { length: -2, mass: 1, ... }. Money is a base dimension of ours, its
 * currency stands beside it. Pieces are counted without a dimension, so EUR/each is money.
 */
export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly angle: number;
  readonly money: number;
}

/** What people call a dimension. Two names may share one dimension (an area, a permeability). */
export type DimensionName =
  | 'number'
  | 'ratio'
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'time'
  | 'angle'
  | 'force'
  | 'pressure'
  | 'speed'
  | 'areal weight'
  | 'density'
  | 'linear density'
  | 'coverage'
  | 'coverage by volume'
  | 'temperature'
  | 'temperature difference'
  | 'ramp'
  | 'thermal expansion'
  | 'viscosity'
  | 'permeability'
  | 'flow rate'
  | 'mass flow'
  | 'leak rate'
  | 'work rate'
  | 'energy'
  | 'power'
  | 'heat of reaction'
  | 'specific heat'
  | 'thermal conductivity'
  | 'heat transfer'
  | 'frequency'
  | 'second moment of area'
  | 'bending stiffness'
  | 'line load'
  | 'diffusivity'
  | 'money'
  | 'wage'
  | 'price per area'
  | 'price per length'
  | 'price per mass'
  | 'price per volume'
  | 'price per piece';

/** What a number is reckoned on. Never part of a unit: `50 mbar absolute` is a pressure and a basis. */
export type Basis = 'by weight' | 'by volume' | 'absolute' | 'gauge' | 'wet' | 'dry' | 'RH';

/** A number with a dimension, in SI. */
export interface Quantity {
  /** value in SI base units; kelvin for temperatures, radians for angles, a fraction (0.12) for per cent */
  readonly si: number;
  readonly dimension: Dimension;
  /** the unit as it was typed, in its standard spelling; absent on computed values */
  readonly unit?: string;
  /** ISO 4217 code, when money is part of the dimension */
  readonly currency?: string;
  /** a temperature difference (K) as against a temperature (degC); only when the dimension is temperature alone */
  readonly difference?: true;
}

export type MeasureSystem = 'si' | 'us';

/** A unit: si = number * up / down + offset. Two whole factors keep short decimal numbers exact through SI and back. */
export interface Unit {
  /** standard spelling, as the notation writes it: `g/m2`, `mPa.s`, `degC`, `EUR/h` */
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly up: number;
  readonly down: number;
  /** kelvin to add; degC and degF alone */
  readonly offset?: number;
  readonly difference?: true;
  readonly currency?: string;
  /** absent: both systems (s, deg, %) */
  readonly system?: MeasureSystem;
}

export interface ParsedUnit {
  readonly unit: Unit;
}
/** `nearest`: likely spellings, best first, at most three; may be empty */
export interface UnknownUnit {
  readonly unknown: string;
  readonly nearest: readonly string[];
}
/** more than one unit of the trade is written so: `oz`, `gal`, `$` */
export interface AmbiguousUnit {
  readonly ambiguous: string;
  readonly choices: readonly string[];
}
export type UnitResult = ParsedUnit | UnknownUnit | AmbiguousUnit;

/** Why a number and a unit make no quantity; `message` is fit for the person at the bench. */
export interface QuantityProblem {
  readonly problem: 'unknown-unit' | 'ambiguous-unit' | 'not-finite' | 'below-absolute-zero' | 'wrong-dimension';
  readonly message: Words;
  /** spellings that would do, best first */
  readonly choices: readonly string[];
}

/** Why two quantities cannot be reckoned together. */
export interface Mismatch {
  readonly mismatch: { readonly left: Dimension; readonly right: Dimension };
  readonly because:
    | 'dimensions'
    | 'currencies'
    | 'two-temperatures'
    | 'temperature'
    | 'division-by-zero'
    | 'not-finite';
  readonly message: Words;
}

export interface FormatOptions {
  /** default 'si' */
  readonly system?: MeasureSystem | 'both';
  /** significant digits; digits before the decimal point are never rounded away */
  readonly digits?: number;
  /** BCP 47, for the decimal mark and grouping; absent: decimal point, no grouping, as the notation is typed */
  readonly locale?: string;
  /** this unit and no other, if it fits the dimension */
  readonly unit?: string;
}

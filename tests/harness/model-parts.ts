import type {
  Amount,
  Argument,
  AtCondition,
  ClothStyle,
  Fact,
  Layer,
  LayerKind,
  Material,
  MaterialKind,
  Phrase,
  Price,
  PricePer,
  Step,
  StepClause,
} from '../../calc/model/index.ts';
import {
  ANGLE,
  AREAL_WEIGHT,
  type Dimension,
  dimension,
  LENGTH,
  MASS,
  MONEY,
  NUMBER,
  PRESSURE,
  TEMPERATURE,
  TIME,
} from '../../calc/quantity/index.ts';

/** Pieces of the model in a word each, for models that tests build by hand. */

export const amount = (si: number, of: Dimension, more: Partial<Amount> = {}): Amount => ({
  si,
  dimension: of,
  ...more,
});
export const mm = (value: number): Amount => amount(value / 1000, LENGTH, { unit: 'mm' });
export const deg = (value: number): Amount => amount((value * Math.PI) / 180, ANGLE, { unit: 'deg' });
export const gsm = (value: number): Amount => amount(value / 1000, AREAL_WEIGHT, { unit: 'g/m2' });
export const minutes = (value: number): Amount => amount(value * 60, TIME, { unit: 'min' });
export const celsius = (value: number): Amount => amount(value + 273.15, TEMPERATURE, { unit: 'degC' });
export const percent = (value: number, basis?: Amount['basis']): Amount =>
  amount(value / 100, NUMBER, { unit: '%', ...(basis === undefined ? {} : { basis }) });
export const mbar = (value: number, basis?: Amount['basis']): Amount =>
  amount(value * 100, PRESSURE, { unit: 'mbar', ...(basis === undefined ? {} : { basis }) });
export const kg = (value: number): Amount => amount(value, MASS, { unit: 'kg' });
export const euro = (value: number): Amount => amount(value, MONEY, { unit: 'EUR', currency: 'EUR' });

const PER: Readonly<Record<PricePer, Dimension>> = {
  area: dimension({ money: 1, length: -2 }),
  length: dimension({ money: 1, length: -1 }),
  mass: dimension({ money: 1, mass: -1 }),
  volume: dimension({ money: 1, length: -3 }),
  piece: MONEY,
};

export function fact<T>(entry: string, path: string, value: T | 'unknown'): Fact<T> {
  return { value, at: { entry, path } };
}

type Said = { readonly [K in keyof Material]?: Material[K] extends Fact<infer T> | undefined ? T | 'unknown' : never };

/** A material with its single facts, each with its place. */
export function material(kind: MaterialKind, name: string, said: Said = {}, more: Partial<Material> = {}): Material {
  const entry = `material/${name}`;
  const facts = Object.fromEntries(Object.entries(said).map(([key, value]) => [key, fact(entry, key, value)]));
  return { entry, kind, name, origin: 'workspace', ...facts, ...more };
}

export function price(name: string, value: number | 'unknown', per: PricePer, thickness?: Amount): Fact<Price> {
  const at = { entry: `material/${name}`, path: 'price' };
  if (value === 'unknown') return { value: 'unknown', at };
  const money: Amount = amount(value, PER[per], { currency: 'EUR' });
  return { value: { amount: money, per, ...(thickness === undefined ? {} : { thickness }) }, at };
}

export const reading = (name: string, path: string, value: AtCondition): Fact<AtCondition> =>
  fact(`material/${name}`, path, value);

export function fabric(
  name: string,
  fibre: string,
  style: ClothStyle,
  sheets: readonly (readonly [number | undefined, number])[],
  more: Partial<Material> = {},
): Material {
  const layers = sheets.map(([angle, weight]) => ({
    arealWeight: gsm(weight),
    ...(angle === undefined ? {} : { angle: deg(angle) }),
  }));
  return material('fabric', name, { fibre, cloth: { style, layers } }, more);
}

export function layer(
  kind: LayerKind,
  name: string,
  of: string | undefined,
  path: string,
  more: Partial<Layer> = {},
): Layer {
  return {
    kind,
    name,
    path,
    ...(of === undefined ? {} : { material: of }),
    extent: { kind: 'net', typed: false },
    clauses: [],
    ...more,
  };
}

export const word = (text: string): Argument => ({ kind: 'word', word: text });
export const said = (value: Amount): Argument => ({ kind: 'amount', amount: value });
export const counted = (count: number, of: string): Argument => said(amount(count, NUMBER, { unit: of }));
export const phrase = (first: string, ...args: readonly Argument[]): Phrase => ({ word: first, arguments: args });
export const clause = (first: string, args: readonly Argument[], ...phrases: readonly Phrase[]): StepClause => ({
  word: first,
  path: `clause.${first}`,
  arguments: args,
  phrases,
});

export function step(path: string, verb: string, more: Partial<Step> = {}): Step {
  return { path, verb, arguments: [], phrases: [], clauses: [], ...more };
}

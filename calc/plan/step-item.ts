import { type Bench, type Figure, isKnown, known, knownBy, quantity } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { NUMBER, type Quantity } from '../quantity/index.ts';
import { countOf, head, subject } from './reading.ts';

/** Something that a step puts down, uses up or works on. */
export interface StepItem {
  /** `tape`, `film`, the name of a layer, `resin`, `holes` */
  readonly what: string;
  readonly material?: string;
  readonly amount: Quantity;
  /** a consumable that is bought for it */
  readonly bought: boolean;
}

/** Of a release: how many coats a new mould takes, and how many an average part of the order. */
export interface Coats {
  readonly first: number;
  readonly average: number;
}

export type Amounts = (bench: Bench, step: Step) => Figure<StepItem>[];

export const item = (
  figure: Figure<number>,
  what: string,
  dimension: Quantity['dimension'],
  step: Step,
  bought = true,
): Figure<StepItem> => {
  if (!isKnown(figure)) return figure;
  const amount = quantity(figure.value, dimension);
  return knownBy({ what, material: bought ? subject(step) : undefined, amount, bought }, figure.reasons);
};

/** What a step works on, where that can be told at all. */
export const worksOn = (
  figure: Figure<number> | undefined,
  what: string,
  dimension: Quantity['dimension'],
  step: Step,
): Figure<StepItem>[] => (figure === undefined ? [] : [item(figure, what, dimension, step, false)]);

export function counted(step: Step, what: string): Figure<StepItem>[] {
  const count = countOf(head(step));
  return count === undefined ? [] : [known({ what, amount: quantity(count, NUMBER), bought: false })];
}

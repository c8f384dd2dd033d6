import { cost } from '../cost/cost.figure.ts';
import { currency } from '../cost/price.figure.ts';
import { benchOf, type Figure, ifKnown, isKnown, knownBy, quantity, whenKnown } from '../figure/index.ts';
import { thickness } from '../laminate/laminate.figure.ts';
import { mass } from '../laminate/mass.figure.ts';
import type { Book, Recipe } from '../model/index.ts';
import { LENGTH, MASS, MONEY, type Quantity } from '../quantity/index.ts';

/** What is compared: the finished part, its cost (one part of the order) and its thickness in the middle. */
export const COMPARED = ['mass', 'cost', 'thickness'] as const;
export type Compared = Readonly<Record<(typeof COMPARED)[number], Figure<Quantity>>>;

export function comparedFigures(recipe: Recipe, book: Book): Compared {
  const bench = benchOf(recipe, book);
  const unit = bench.ask(currency);
  const money = isKnown(unit) ? unit.value : undefined;
  const of = (figure: Figure<number>, as: (value: number) => Quantity): Figure<Quantity> =>
    ifKnown(figure, (value, reasons) => knownBy(as(value), reasons));
  return {
    mass: of(bench.ask(mass), (value) => quantity(value, MASS)),
    cost: of(bench.ask(cost), (value) => quantity(value, MONEY, money)),
    thickness: of(bench.ask(thickness), (value) => quantity(value, LENGTH)),
  };
}

/** How a figure changes; cannot be told where either cannot. */
export function change(before: Figure<Quantity>, after: Figure<Quantity>): Figure<Quantity> {
  return whenKnown({ before, after }, (v, reasons) => knownBy({ ...v.after, si: v.after.si - v.before.si }, reasons));
}

import { type Shown, text } from './figure.ts';

/** `a or b or c`: one of a few. */
export const either = (list: readonly Shown[]): Shown =>
  joined(list, (one, others) => text('{one} or {others}', { one, others }));

/** `a and b and c`: all of them. */
export const both = (list: readonly Shown[]): Shown =>
  joined(list, (one, others) => text('{one} and {others}', { one, others }));

/** `a, b, c` */
export const listed = (list: readonly Shown[]): Shown =>
  joined(list, (one, others) => text('{one}, {others}', { one, others }));

const joined = (list: readonly Shown[], two: (one: Shown, others: Shown) => Shown): Shown =>
  list.length === 0
    ? ''
    : list.slice(0, -1).reduceRight<Shown>((others, one) => two(one, others), list.at(-1) as Shown);

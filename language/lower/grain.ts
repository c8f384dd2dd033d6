import type { Amount } from '../../calc/model/index.ts';
import { bareNumber } from '../../calc/quantity/index.ts';
import type { Verb } from '../words/index.ts';
import type { Read } from './arguments.ts';

/** Grains of abrasive as the paper bears them: `P80` is 80 grit. Source: ISO 6344 (coated abrasives), from memory. */
const GRAIN = /^P(\d{2,4})$/;

/** The grain that a word means, for verbs that take one: a layer may be called P80 where nothing is sanded. */
export function grainOf(word: string, verb: Verb | undefined): Amount | undefined {
  const grain = GRAIN.exec(word)?.[1];
  if (grain === undefined || verb?.takes?.some(({ words }) => words?.includes('grit') === true) !== true)
    return undefined;
  return { ...bareNumber(Number(grain)), unit: 'grit' };
}

/** What a step says, with its grains as the numbers that they are. */
export const withGrains = (reads: readonly Read[], verb: Verb | undefined): readonly Read[] =>
  reads.map((read) => {
    const amount = read.argument.kind === 'word' ? grainOf(read.argument.word, verb) : undefined;
    return amount === undefined ? read : { ...read, argument: { kind: 'amount', amount } };
  });

import type { DimensionName } from '../../calc/quantity/index.ts';
import { argument } from './arguments.ts';
import type { Word } from './types.ts';

/** A habit as it is written in the tables: one value in the place of a common one. */
export interface HabitRow {
  readonly word: string;
  readonly takes: DimensionName | 'count';
  /** the common value, which also is the example */
  readonly usual: string;
  readonly source: string;
  readonly meaning: string;
}

/** Rows as words: what stands behind `habit` in the entry of the shop. */
export const habitWords = (rows: readonly HabitRow[]): readonly Word[] =>
  rows.map(({ word, takes, usual, source, meaning }) => ({
    word,
    at: ['value of habit'],
    takes: [argument(takes)],
    example: `habit ${word} ${usual}`,
    default: usual,
    source,
    meaning,
  }));

import type { Argument } from './types.ts';

/** Short spelling of an argument, so that a row of the table stays readable: `argument('length', { after: 'by' })`. */
export const argument = (dimension: Argument['dimension'], more: Omit<Argument, 'dimension'> = {}): Argument => ({
  dimension,
  ...more,
});

/** `52 % by weight`: a share of a mixture always says what it is reckoned on. */
export const share = (more: Omit<Argument, 'dimension' | 'basis'> = {}): Argument =>
  argument('ratio', { basis: ['by weight', 'by volume'], ...more });

/** `at 23 degC` */
export const atTemperature = (optional = false): Argument =>
  argument('temperature', { after: 'at', ...(optional ? { optional: true as const } : {}) });

/** `from A to B` of one dimension, as `40 min to 24 h` is typed. */
export const range = (dimension: Argument['dimension']): readonly Argument[] => [
  argument(dimension),
  argument(dimension, { after: 'to' }),
];

export const FROM_MEMORY = 'from memory';
export const COMMON_PRACTICE = 'common practice';

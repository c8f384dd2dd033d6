import type { Usual } from '../../../calc/figure/index.ts';
import { kelvinDifference } from './shown.ts';

/** So near the temperature of its data sheet a cure counts as that. */
export const NEAR: Usual = {
  habit: 'cure_near',
  what: 'how near its data sheet a cure counts as that',
  value: kelvinDifference(5),
  source: 'from memory',
};

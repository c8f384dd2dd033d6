import type { Amount, Step } from '../../../calc/model/index.ts';
import { amountOf, head } from '../../../calc/plan/reading.ts';
import { PRESSURE, TIME } from '../../../calc/quantity/index.ts';
import type { RecipeContext } from '../rule.ts';
import { allOf, stepsOf } from './steps.ts';

/** `leak test 5 mbar in 10 min`, as far as it is said. */
export interface SaidTest {
  readonly step: Step;
  readonly rise?: Amount;
  readonly time?: Amount;
}

export function leakTests(context: RecipeContext): readonly SaidTest[] {
  return allOf(stepsOf(context), 'leak test').map(({ step }) => {
    const [rise, time] = [amountOf(head(step), PRESSURE), amountOf(head(step), TIME)];
    return { step, ...(rise === undefined ? {} : { rise }), ...(time === undefined ? {} : { time }) };
  });
}

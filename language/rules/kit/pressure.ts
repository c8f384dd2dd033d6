import { isKnown } from '../../../calc/figure/index.ts';
import type { Amount } from '../../../calc/model/index.ts';
import { amountOf, head } from '../../../calc/plan/reading.ts';
import { PRESSURE } from '../../../calc/quantity/index.ts';
import { absoluteFromGauge } from '../../../calc/vacuum/gauge.ts';
import { airPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import type { RecipeContext } from '../rule.ts';
import { stepsOf, type WorkedStep } from './steps.ts';

/** A vacuum that a step asks for. */
export interface Asked {
  readonly worked: WorkedStep;
  readonly amount: Amount;
  /** what is left in the bag, Pa absolute; negative where more is asked than the air has */
  readonly left: number;
}

/** All `vacuum` steps whose reference is said, those in `infuse` too. */
export function vacuumsOf(context: RecipeContext): readonly Asked[] {
  const asked: Asked[] = [];
  const air = context.ask(airPressure);
  if (!isKnown(air)) return asked;
  for (const worked of stepsOf(context)) {
    if (worked.step.verb !== 'vacuum') continue;
    const amount = amountOf(head(worked.step), PRESSURE);
    if (amount?.basis === 'absolute') asked.push({ worked, amount, left: amount.si });
    if (amount?.basis !== 'gauge') continue;
    const left = absoluteFromGauge(amount.si, air.value);
    asked.push({ worked, amount, left: typeof left === 'number' ? left : air.value - amount.si });
  }
  return asked;
}

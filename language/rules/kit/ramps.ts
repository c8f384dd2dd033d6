import type { Amount, Step } from '../../../calc/model/index.ts';
import { amountOf, head } from '../../../calc/plan/reading.ts';
import { dimension, TEMPERATURE } from '../../../calc/quantity/index.ts';
import type { RecipeContext } from '../rule.ts';
import { allOf, stepsOf, type WorkedStep } from './steps.ts';

/** `ramp 10 K/h to 50 degC` in a cure or a postcure. */
export interface Ramp {
  readonly heat: WorkedStep;
  readonly step: Step;
  /** as typed */
  readonly rate?: Amount;
  /** K */
  readonly to?: number;
}

const RATE = dimension({ temperature: 1, time: -1 });

export function rampsOf(context: RecipeContext): readonly Ramp[] {
  return allOf(stepsOf(context), 'cure', 'postcure').flatMap((heat) =>
    (heat.step.steps ?? []).flatMap((step) => {
      if (step.verb !== 'ramp') return [];
      const [rate, to] = [amountOf(head(step), RATE), amountOf(head(step), TEMPERATURE)?.si];
      return [{ heat, step, ...(rate === undefined ? {} : { rate }), ...(to === undefined ? {} : { to }) }];
    }),
  );
}

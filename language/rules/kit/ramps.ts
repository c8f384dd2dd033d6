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
  const ramps: Ramp[] = [];
  for (const heat of allOf(stepsOf(context), 'cure', 'postcure')) ramps.push(...rampsIn(heat));
  return ramps;
}

/** Those of one cure. */
export function rampsIn(heat: WorkedStep): readonly Ramp[] {
  const ramps: Ramp[] = [];
  for (const step of heat.step.steps ?? []) {
    if (step.verb !== 'ramp') continue;
    const said = head(step);
    ramps.push({ heat, step, rate: amountOf(said, RATE), to: amountOf(said, TEMPERATURE)?.si });
  }
  return ramps;
}

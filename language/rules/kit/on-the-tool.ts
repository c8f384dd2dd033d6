import { isKnown } from '../../../calc/figure/index.ts';
import { stepStandingTime } from '../../../calc/plan/step.figure.ts';
import type { RecipeContext } from '../rule.ts';
import { firstOf, stepsOf } from './steps.ts';

/**
 * How long a part stays on its tool at least, s: what it stands from the first layer until it is taken out, hands left out,
 * since nobody knows how fast they were. None where a time cannot be told, or where the plan never takes it out.
 */
export function leastOnTheTool(context: RecipeContext): number | undefined {
  const steps = stepsOf(context).filter(({ inside }) => inside === undefined);
  const lay = firstOf(steps, 'lay');
  const out = firstOf(steps, 'demould');
  if (lay === undefined || out === undefined) return undefined;
  let sum = 0;
  for (const { step } of steps.slice(steps.indexOf(lay), steps.indexOf(out))) {
    const time = context.ask(stepStandingTime, step.path);
    if (!isKnown(time)) return undefined;
    sum += time.value;
  }
  return sum;
}

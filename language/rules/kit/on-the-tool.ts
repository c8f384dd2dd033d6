import { isKnown } from '../../../calc/figure/index.ts';
import { stepStandingTime } from '../../../calc/plan/step.figure.ts';
import type { RecipeContext } from '../rule.ts';
import { allOf, stepsOf, type WorkedStep } from './steps.ts';

const ofTheProcess = ({ inside }: WorkedStep): boolean => inside === undefined;

/**
 * How long a part stays on its tool at least, s: what it stands from the first layer until it is taken out, hands left out,
 * since nobody knows how fast they were. None where a time cannot be told, or where the plan never takes it out.
 */
export function leastOnTheTool(context: RecipeContext): number | undefined {
  const steps = stepsOf(context);
  const lay = allOf(steps, 'lay').find(ofTheProcess);
  const out = allOf(steps, 'demould').find(ofTheProcess);
  if (lay === undefined || out === undefined) return undefined;
  let sum = 0;
  for (const { step, inside } of steps.slice(steps.indexOf(lay), steps.indexOf(out))) {
    if (inside !== undefined) continue;
    const time = context.ask(stepStandingTime, step.path);
    if (!isKnown(time)) return undefined;
    sum += time.value;
  }
  return sum;
}

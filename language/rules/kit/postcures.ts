import { hottest } from '../../../calc/cure/equivalent.ts';
import { isKnown, type MaterialFacts } from '../../../calc/figure/index.ts';
import type { Amount, Step } from '../../../calc/model/index.ts';
import { amountOf, head } from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import type { RecipeContext } from '../rule.ts';
import { spansOf } from './cures.ts';
import { transitionReached } from './glass-transition.ts';
import { rampsIn } from './ramps.ts';
import { allOf, before, stepsOf, type WorkedStep } from './steps.ts';

/** A heating faster than the resin can follow: its glass transition keeps ahead of a slow ramp. */
export interface FastHeating {
  readonly heat: WorkedStep;
  /** the line that heats: a ramp, or a hold with no ramp before it */
  readonly step: Step;
  /** as typed; none where it goes straight into the heat */
  readonly rate?: Amount;
  readonly to: number;
  readonly resin: MaterialFacts;
  readonly reached: number;
}

/** Heatings over what the resin of the process has reached, that are faster than `slow` (K/s). */
export function fastHeatings(context: RecipeContext, slow: number): readonly FastHeating[] {
  const { process } = context.recipe;
  if (process?.resin === undefined || process.kind === 'prepreg') return [];
  const resin = context.bench.material(process.resin);
  const work = context.ask(workTemperature);
  if (resin === undefined || !isKnown(work)) return [];
  const steps = stepsOf(context);
  const found: FastHeating[] = [];
  for (const heat of allOf(steps, 'cure', 'postcure')) {
    const fast = fastLines(heat, slow);
    if (fast.length === 0) continue;
    const earlier = spansOf(context, allOf(before(steps, heat), 'cure', 'postcure'));
    const cured = Math.max(work.value, (isKnown(earlier) ? hottest(earlier.value) : undefined) ?? 0);
    const reached = transitionReached(context.bench, resin, cured);
    const over = fast.find(({ to }) => to > reached);
    if (over !== undefined) found.push({ ...over, heat, resin, reached });
  }
  return found;
}

/** The ramps of a cure that are faster than `slow`; its holds where it has none. */
function fastLines(heat: WorkedStep, slow: number): readonly Pick<FastHeating, 'step' | 'rate' | 'to'>[] {
  const lines = heat.step.steps ?? [];
  const ramps = rampsIn(heat);
  if (ramps.length > 0)
    return ramps.flatMap(({ step, rate, to }) =>
      rate === undefined || to === undefined || rate.si <= slow * 1.001 ? [] : [{ step, rate, to }],
    );
  return (lines.length === 0 ? [heat.step] : lines).flatMap((step) => {
    const to = amountOf(head(step), TEMPERATURE)?.si;
    return to === undefined ? [] : [{ step, to }];
  });
}

import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  isKnown,
  known,
  missing,
  reason,
  reasonsOf,
  typed,
} from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { stepAmount } from './amount.figure.ts';
import { stepStandingTime, stepWorkingTime } from './step.figure.ts';

/** Steps that count in a sum are the outermost: what is in a block counts with its block. */
function sumOver(bench: Bench, of: typeof stepWorkingTime, how: string): Figure<number> {
  const process = typed(bench.recipe.process, 'the process', inRecipe(bench, ''));
  if (!isKnown(process)) return process;
  const times = allKnown(process.value.steps.map(({ path }) => bench.ask(of, path)));
  if (!isKnown(times)) return times;
  return known(sum(times.value), reason('computed', how, { reasons: times.reasons }));
}

function sum(times: readonly number[]): number {
  let all = 0;
  for (const time of times) all += time;
  return all;
}

/** Hands-on time of the first part on a new mould, person-seconds. */
export const workingTime = defineFigure<number>('working_time', (bench) =>
  sumOver(bench, stepWorkingTime, 'working time of all steps, one pair of hands'),
);

/** Time in which the part waits, one step after the other, s. */
export const standingTime = defineFigure<number>('standing_time', (bench) =>
  sumOver(bench, stepStandingTime, 'standing time of all steps'),
);

/** Hands-on time of the average part of the order: a mould is not released anew for every part; person-seconds. */
export const averageWorkingTime = defineFigure<number>('average_working_time', (bench) => {
  const all = bench.ask(workingTime);
  const steps = bench.ask(processSteps);
  if (!isKnown(all) || !isKnown(steps)) return missing(all, steps);
  const saved: Figure<number>[] = [];
  for (const step of steps.value) if (step.verb === 'release') saved.push(savedOnRelease(bench, step));
  const less = allKnown(saved);
  if (!isKnown(less)) return less;
  return known(
    Math.max(0, all.value - sum(less.value)),
    reason('computed', 'working time, with the release coats of the average part', { reasons: reasonsOf(all, steps) }),
  );
});

function savedOnRelease(bench: Bench, { path }: Step): Figure<number> {
  const amount = bench.ask(stepAmount, path);
  const time = bench.ask(stepWorkingTime, path);
  if (!isKnown(amount) || !isKnown(time)) return missing(amount, time);
  const { coats } = amount.value;
  return known(coats === undefined || coats.first <= 0 ? 0 : time.value * (1 - coats.average / coats.first));
}

import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  known,
  reason,
  typed,
  whenKnown,
} from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { stepAmount } from './amount.figure.ts';
import { stepStandingTime, stepWorkingTime } from './step.figure.ts';

/** Steps that count in a sum: what is in a block counts with its block. */
const outermost = (bench: Bench): Figure<readonly Step[]> => {
  const { process } = bench.recipe;
  return ifKnown(typed(process, 'the process', inRecipe(bench, '')), (process) => known(process.steps));
};

const sumOver = (bench: Bench, of: typeof stepWorkingTime, how: string): Figure<number> =>
  ifKnown(outermost(bench), (steps) =>
    ifKnown(allKnown(steps.map((s) => bench.ask(of, s.path))), (each, reasons) =>
      known(
        each.reduce((sum, t) => sum + t, 0),
        reason('computed', how, { reasons }),
      ),
    ),
  );

/** Hands-on time of the first part on a new mould, person-seconds. */
export const workingTime = defineFigure<number>('working_time', (bench) =>
  sumOver(bench, stepWorkingTime, 'working time of all steps, one pair of hands'),
);

/** Time in which the part waits, one step after the other, s. */
export const standingTime = defineFigure<number>('standing_time', (bench) =>
  sumOver(bench, stepStandingTime, 'standing time of all steps'),
);

/** Hands-on time of the average part of the order: a mould is not released anew for every part; person-seconds. */
export const averageWorkingTime = defineFigure<number>('average_working_time', (bench) =>
  whenKnown({ all: bench.ask(workingTime), steps: bench.ask(processSteps) }, ({ all, steps }, reasons) => {
    const releases = steps.filter((s) => s.verb === 'release');
    return ifKnown(allKnown(releases.map((s) => savedOnRelease(bench, s))), (less) =>
      known(
        Math.max(0, all - less.reduce((sum, t) => sum + t, 0)),
        reason('computed', 'working time, with the release coats of the average part', { reasons }),
      ),
    );
  }),
);

function savedOnRelease(bench: Bench, step: Step): Figure<number> {
  return whenKnown(
    { amount: bench.ask(stepAmount, step.path), time: bench.ask(stepWorkingTime, step.path) },
    ({ amount, time }) => {
      const coats = amount.coats;
      return known(coats === undefined || coats.first <= 0 ? 0 : time * (1 - coats.average / coats.first));
    },
  );
}

import { allKnown, type Bench, type Figure, ifKnown, isKnown, known } from '../figure/index.ts';
import { mass } from '../laminate/mass.figure.ts';
import type { BuildRecord, Step } from '../model/index.ts';
import { allSteps } from '../plan/reading.ts';
import { stepWorkingTime } from '../plan/step.figure.ts';
import { resinToMix } from '../resin/needs.figure.ts';
import { stepNeeds } from '../resin/step-pots.figure.ts';
import { leakLimit } from '../vacuum/vacuum.figure.ts';
import { type BuildQuantity, stepTimes } from './readings.ts';

/** What the plan says a build should come to, in the units of `measured`; undefined where it cannot be told. */
export function planned(bench: Bench, record: BuildRecord, quantity: BuildQuantity): number | undefined {
  const value = (figure: Figure<number>): number | undefined => (isKnown(figure) ? figure.value : undefined);
  switch (quantity) {
    case 'mass':
      return value(bench.ask(mass));
    case 'resin':
      return value(batchResin(bench));
    case 'leak':
      return value(ifKnown(bench.ask(leakLimit), (limit) => known(limit.rise / limit.time)));
    case 'hours':
      return sameSteps(bench, record);
    case 'fill':
      return undefined;
  }
}

/** kg in the batches of a record; what no step mixes is planned for all the same. */
function batchResin(bench: Bench): Figure<number> {
  const steps = allSteps(bench.recipe.process?.steps ?? []);
  const each = allKnown(steps.map((step) => bench.ask(stepNeeds, step.path)));
  return ifKnown(each, (needs) => {
    const batches = needs.flatMap((of, i) => of.filter(({ resin }) => isBatch(bench, steps[i], resin)));
    return batches.length === 0
      ? ifKnown(bench.ask(resinToMix, ''), (mix) => known(mix.total))
      : known(batches.reduce((sum, { mass }) => sum + mass, 0));
  });
}

/** Whether a record tells a pot as a batch: what is laid with catalyst is told for its layer. */
const isBatch = (bench: Bench, step: Step | undefined, resin: string): boolean =>
  step?.lay === undefined || bench.material(resin)?.catalyst === undefined;

/** Working time of the steps that the record times, all lines of a verb together; undefined where one of them is not in the plan. */
function sameSteps(bench: Bench, record: BuildRecord): number | undefined {
  const timed = new Set(stepTimes(record).map(({ verb }) => verb));
  if (timed.size === 0) return undefined;
  const steps = allSteps(bench.recipe.process?.steps ?? []);
  let sum = 0;
  for (const verb of timed) {
    const lines = steps.filter((step) => step.verb === verb);
    if (lines.length === 0) return undefined;
    for (const { path } of lines) {
      const time = bench.ask(stepWorkingTime, path);
      if (!isKnown(time)) return undefined;
      sum += time.value;
    }
  }
  return sum;
}

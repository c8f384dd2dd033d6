import type { Amount, Step, StepClause } from '../../../calc/model/index.ts';
import { amountOf, clauseWith, flat, hasWord, head } from '../../../calc/plan/reading.ts';
import { LENGTH, sameDimension } from '../../../calc/quantity/index.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { layersOf } from './layers.ts';
import { stepsOf } from './steps.ts';

/** A step `drill`, with the layer that it goes into. */
export interface Drilled {
  readonly step: Step;
  readonly into: LaidLayer;
  /** m */
  readonly diameter: number;
  /** half of what the pattern measures along x and y from the middle of the outer holes, m; none where no grid is said */
  readonly reach?: { readonly x: number; readonly y: number };
}

const none: readonly Drilled[] = [];

export function drilledIn(context: RecipeContext): readonly Drilled[] {
  const drills = stepsOf(context).filter(({ step }) => step.verb === 'drill');
  if (drills.length === 0) return none;
  const layers = layersOf(context);
  return drills.flatMap(({ step }) => {
    const name = step.phrases.find((phrase) => phrase.word === 'in')?.arguments[0];
    const into = name?.kind === 'word' ? layers.find((laid) => laid.name === name.word) : undefined;
    const diameter = amountOf(head(step), LENGTH);
    if (into === undefined || diameter === undefined) return [];
    const reach = reachOf(step);
    return [{ step, into, diameter: diameter.si, reach }];
  });
}

/** `grid 4 by 2, 20 mm by 30 mm apart` */
function reachOf(step: Step): Drilled['reach'] {
  const grid = clauseWith(step, 'grid');
  const apart = clauseWith(step, 'apart');
  const [along, across] =
    grid === undefined ? [] : flat(grid).flatMap((argument) => (argument.kind === 'count' ? [argument.count] : []));
  const [x, y] = apart === undefined ? [] : lengthsIn(apart);
  if (along === undefined || x === undefined) return undefined;
  return { x: ((along - 1) * x.si) / 2, y: (((across ?? 1) - 1) * (y ?? x).si) / 2 };
}

const lengthsIn = (clause: StepClause): Amount[] =>
  flat(clause).flatMap((argument) =>
    argument.kind === 'amount' && sameDimension(argument.amount.dimension, LENGTH) ? [argument.amount] : [],
  );

/** Whether the walls of its holes are closed: in the step, or by `seal hole` after it. */
export const isSealed = (context: RecipeContext, { step }: Drilled): boolean => {
  if (step.clauses.some((clause) => hasWord(flat(clause), 'sealed', 'oversize'))) return true;
  const steps = stepsOf(context);
  return steps
    .slice(steps.findIndex((worked) => worked.step === step))
    .some((worked) => worked.step.verb === 'seal hole');
};

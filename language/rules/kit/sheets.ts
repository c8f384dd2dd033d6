import { sheetPast } from '../../../calc/bag/bag.figure.ts';
import { isKnown } from '../../../calc/figure/index.ts';
import type { Step, StepClause } from '../../../calc/model/index.ts';
import { amountOf, flat, pastEdge } from '../../../calc/plan/reading.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import type { RecipeContext } from '../rule.ts';
import { firstOf, stepsOf } from './steps.ts';

/** A sheet over the stack: how far it runs past the edge (m, negative: short of it), and whether the step says so. */
export interface Sheet {
  readonly step: Step;
  readonly past: number;
  readonly typed: boolean;
  /** the clause that says it */
  readonly clause?: StepClause;
}

export function sheetOf(context: RecipeContext, verb: string): Sheet | undefined {
  const step = firstOf(stepsOf(context), verb)?.step;
  if (step === undefined) return undefined;
  const past = sheetPast(context.bench, step);
  if (!isKnown(past)) return undefined;
  const typed = pastEdge(step) !== undefined;
  const clause = typed ? step.clauses.find((each) => amountOf(flat(each), LENGTH) !== undefined) : undefined;
  return { step, past: past.value, typed, clause };
}

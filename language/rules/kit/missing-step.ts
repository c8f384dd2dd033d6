import { type Text, text } from '../../../calc/figure/figure.ts';
import type { ProcessKind } from '../../../calc/model/index.ts';
import type { Fix } from '../../lower/index.ts';
import { classesOf, precedes } from '../../words/index.ts';
import type { RecipeContext } from '../rule.ts';
import { firstOf, stepsOf, type WorkedStep } from './steps.ts';

/** Everything that comes later than a class by the partial order, step by step. */
function laterThan(step: string): ReadonlySet<string> {
  const later = new Set<string>();
  const follow = (from: string): void => {
    for (const pair of precedes) {
      if (!classesOf(from).includes(pair.first) || later.has(pair.later)) continue;
      later.add(pair.later);
      follow(pair.later);
    }
  };
  follow(step);
  return later;
}

/** The first line that must come later than a step of this class. */
export const firstLater = (context: RecipeContext, step: string): WorkedStep | undefined =>
  firstOf(
    stepsOf(context).filter(({ inside }) => inside === undefined),
    ...laterThan(step),
  );

/** Writes a step where the partial order has it: before the first line that must come later, else at the end. */
export function addStep(context: RecipeContext, step: string, line: string): Fix | undefined {
  const next = firstLater(context, step);
  const title = text('Add: {what}', { what: line });
  if (next !== undefined) return context.edit.lineBefore(title, next.step.path, line);
  const last = stepsOf(context).findLast(({ inside }) => inside === undefined);
  return last === undefined ? undefined : context.edit.lineAfter(title, last.step.path, line);
}

/** A step that kinds of process cannot do without. */
export interface Wanted {
  readonly step: string;
  readonly kinds: readonly ProcessKind[];
  readonly message: Text;
  /** what is written where it is missing: nearly always it is there, and nobody asks */
  readonly line?: (context: RecipeContext) => string | undefined;
}

/** Reports a step that a kind of process cannot do without, at the line that opens the process. A process without steps is only begun. */
export function reportMissing(context: RecipeContext, wanted: Wanted): void {
  const { process } = context.recipe;
  if (process?.kind === undefined || !wanted.kinds.includes(process.kind)) return;
  const steps = stepsOf(context);
  if (steps.length === 0 || firstOf(steps, wanted.step) !== undefined) return;
  const line = wanted.line?.(context);
  const fix = line === undefined ? undefined : addStep(context, wanted.step, line);
  context.report({ at: process.path, message: wanted.message, fixes: [fix] });
}

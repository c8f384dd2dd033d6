import { type Text, text } from '../../../calc/figure/figure.ts';
import type { ProcessKind } from '../../../calc/model/index.ts';
import type { Fix } from '../../lower/index.ts';
import { classesOf, precedes } from '../../words/index.ts';
import type { RecipeContext } from '../rule.ts';
import { allOf, firstOf, stepsOf, type WorkedStep } from './steps.ts';

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

/** Reports a step that a kind of process cannot do without, at the line that opens the process. A process without steps is only begun. */
export function reportMissing(
  context: RecipeContext,
  wanted: {
    readonly step: string;
    readonly kinds: readonly ProcessKind[];
    readonly message: Text;
    readonly line?: string;
  },
): void {
  const { process } = context.recipe;
  const steps = stepsOf(context);
  if (process?.kind === undefined || steps.length === 0 || !wanted.kinds.includes(process.kind)) return;
  if (allOf(steps, wanted.step).length > 0) return;
  const fix = wanted.line === undefined ? undefined : addStep(context, wanted.step, wanted.line);
  context.report({ at: process.path, message: wanted.message, fixes: [fix] });
}

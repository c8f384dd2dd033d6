import { layPlan } from '../../../calc/plan/lay.figure.ts';
import { firstClause } from '../../../calc/plan/reading.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { valueOf } from './layers.ts';

/** Where the share of fibre or resin of a layer is typed: on its line, or on the step that lays it. */
export function saidAt(context: RecipeContext, laid: LaidLayer): string | undefined {
  if (laid.layer.fraction !== undefined) return `${laid.path}.${laid.layer.fraction.of}`;
  const steps = valueOf(context.ask(layPlan))?.stepsOf.get(laid.key) ?? [];
  return steps
    .flatMap((step) => [firstClause(step, 'fibre'), firstClause(step, 'resin')])
    .find((clause) => clause !== undefined)?.path;
}

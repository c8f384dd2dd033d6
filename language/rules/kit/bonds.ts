import { own } from '../../../calc/own.ts';
import type { RecipeContext } from '../rule.ts';
import { between, stepsOf, type WorkedStep } from './steps.ts';

/** A bond, or a layer, that is put on what has cured before. */
export interface OnCured {
  /** the cure after which the face is hard */
  readonly cure: WorkedStep;
  readonly on: WorkedStep;
  readonly steps: readonly WorkedStep[];
}

const BONDED = ['bond', 'lay', 'fillet'];

/** Everything that is bonded or laid after a cure, with what is done in between. */
export function onCured(context: RecipeContext): readonly OnCured[] {
  const steps = stepsOf(context).filter(({ inside }) => inside === undefined);
  const found: OnCured[] = [];
  let cure: WorkedStep | undefined;
  for (const on of steps) {
    if (cure !== undefined && BONDED.includes(on.step.verb)) found.push({ cure, on, steps: between(steps, cure, on) });
    if (on.classes.has('cure') || on.classes.has('demould')) cure = on;
  }
  return found;
}

/** Steps that name nothing, as they are spoken of. */
const UNNAMED: Readonly<Record<string, string>> = { bond: 'the bond', fillet: 'the fillet', lay: 'the next layer' };

/** What a bond or a lay step puts down, as it is spoken of. */
export function spoken({ step, layers }: WorkedStep): string {
  const first = step.arguments[0];
  return (
    layers[0]?.name ?? step.material ?? (first?.kind === 'word' ? first.word : (own(UNNAMED, step.verb) ?? step.verb))
  );
}

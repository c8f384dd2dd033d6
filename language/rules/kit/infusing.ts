import { isKnown } from '../../../calc/figure/index.ts';
import type { Step } from '../../../calc/model/index.ts';
import { partFrame, placedPoint } from '../../../calc/outline/part.figure.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { allSaid, head, subject } from '../../../calc/plan/reading.ts';
import type { RecipeContext } from '../rule.ts';
import { stepsOf } from './steps.ts';

/** A line of `infuse` that opens or clamps a feed or a vent. */
export interface Turn {
  readonly step: Step;
  readonly name: string;
  /** what `when` waits for: a word, or a point that the front has reached */
  readonly when?: { readonly words: readonly string[]; readonly point?: Point };
}

export function turnsOf(context: RecipeContext, verb: 'open' | 'clamp'): readonly Turn[] {
  return stepsOf(context).flatMap(({ step, inside }) => {
    if (step.verb !== verb || inside?.verb !== 'infuse') return [];
    const name = subject(step);
    if (name === undefined) return [];
    const when =
      step.phrases.some(({ word }) => word === 'when') ||
      head(step).some((said) => said.kind === 'word' && said.word === 'when');
    if (!when) return [{ step, name }];
    const frame = context.ask(partFrame);
    const said = allSaid(step);
    const at = said.find((each) => each.kind === 'point');
    const point = at?.kind === 'point' && isKnown(frame) ? placedPoint(frame.value, at.point) : undefined;
    const words = said.flatMap((each) => (each.kind === 'word' ? [each.word] : []));
    return [{ step, name, when: { words, ...(point === undefined || 'problem' in point ? {} : { point }) } }];
  });
}

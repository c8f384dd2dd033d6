import { isKnown } from '../../../calc/figure/index.ts';
import type { PlacePoint, Step } from '../../../calc/model/index.ts';
import { partFrame, placedPoint } from '../../../calc/outline/part.figure.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { allSaid, hasWord, head, subject } from '../../../calc/plan/reading.ts';
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
  const turns: Turn[] = [];
  for (const { step, inside } of stepsOf(context)) {
    if (step.verb !== verb || inside?.verb !== 'infuse') continue;
    const name = subject(step);
    if (name !== undefined)
      turns.push({ step, name, when: hasWord(head(step), 'when') ? waitsFor(context, step) : undefined });
  }
  return turns;
}

function waitsFor(context: RecipeContext, step: Step): Turn['when'] {
  const words: string[] = [];
  let typed: PlacePoint | undefined;
  for (const said of allSaid(step)) {
    if (said.kind === 'word') words.push(said.word);
    else if (said.kind === 'point') typed ??= said.point;
  }
  const frame = typed === undefined ? undefined : context.ask(partFrame);
  const point =
    typed === undefined || frame === undefined || !isKnown(frame) ? undefined : placedPoint(frame.value, typed);
  return { words, point: point === undefined || 'problem' in point ? undefined : point };
}

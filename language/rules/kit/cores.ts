import { hasWord, head } from '../../../calc/plan/reading.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { layersOf, ofKind, onePerLine } from './layers.ts';
import { stepsOf, type WorkedStep } from './steps.ts';

export const coresOf = (context: RecipeContext): readonly LaidLayer[] => onePerLine(ofKind(layersOf(context), 'core'));

/** Steps of a verb that name this layer, or no layer at all. */
export const stepsOn = (
  context: RecipeContext,
  { layer }: LaidLayer,
  ...verbs: readonly string[]
): readonly WorkedStep[] =>
  stepsOf(context).filter(({ step }) => {
    if (!verbs.includes(step.verb)) return false;
    const names = layersOf(context).filter((laid) => hasWord(head(step), laid.name));
    return names.length === 0 || names.some((laid) => laid.layer.name === layer.name);
  });

/** Pressed into paste or wet mat: in its line, or by a step. */
export const isBedded = (context: RecipeContext, core: LaidLayer): boolean =>
  core.layer.bedded !== undefined || stepsOn(context, core, 'bed').length > 0;

import { allSteps } from '../../../calc/plan/reading.ts';
import { namedLayers } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { layersOf } from './layers.ts';

/** Whether a step lays what no layer is called: what it means is not known yet, nor what else it would lay. */
export function laysUnknown(context: RecipeContext): boolean {
  const layers = layersOf(context);
  return allSteps(context.recipe.process?.steps ?? []).some(({ lay }) =>
    [lay?.first, lay?.last].some((name) => name !== undefined && namedLayers(layers, name).length === 0),
  );
}

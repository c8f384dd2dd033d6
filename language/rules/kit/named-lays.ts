import { allSteps } from '../../../calc/plan/reading.ts';
import { namedLayers } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { layersOf } from './layers.ts';

/** Whether a step lays what no layer is called: what it means is not known yet, nor what else it would lay. */
export function laysUnknown(context: RecipeContext): boolean {
  const layers = layersOf(context);
  for (const { lay } of allSteps(context.recipe.process?.steps ?? [])) {
    if (lay === undefined) continue;
    if (lay.first !== undefined && namedLayers(layers, lay.first).length === 0) return true;
    if (lay.last !== undefined && namedLayers(layers, lay.last).length === 0) return true;
  }
  return false;
}

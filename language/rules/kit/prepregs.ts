import type { MaterialFacts } from '../../../calc/figure/index.ts';
import type { RecipeContext } from '../rule.ts';
import { stepsOf, type WorkedStep } from './steps.ts';

/** Each prepreg of the stack with the step that lays it first. */
export function firstPrepregs(
  context: RecipeContext,
): readonly { readonly material: MaterialFacts; readonly worked: WorkedStep }[] {
  const found = new Map<string, { material: MaterialFacts; worked: WorkedStep }>();
  for (const worked of stepsOf(context)) {
    for (const { layer } of worked.layers) {
      const material =
        layer.material === undefined || found.has(layer.material) ? undefined : context.bench.material(layer.material);
      if (material?.kind === 'prepreg') found.set(material.name, { material, worked });
    }
  }
  return [...found.values()];
}

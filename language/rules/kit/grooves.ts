import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { valueOf } from './layers.ts';

/** What lies in the groove of a strip: the copies of its line on top of each other, m. Undefined where one of them is not known. */
export function heightInGroove(
  context: RecipeContext,
  layers: readonly LaidLayer[],
  strip: LaidLayer,
): number | undefined {
  let sum = 0;
  for (const copy of layers.filter(({ path }) => path === strip.path)) {
    const thick = valueOf(context.ask(layerThickness, copy.key));
    if (thick === undefined) return undefined;
    sum += thick;
  }
  return sum;
}

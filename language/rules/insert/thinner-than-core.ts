import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { covers, layerFootprint } from '../../../calc/stack/footprint.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { insertsOf } from '../../../calc/stack/order.ts';
import { habitOf } from '../kit/habit.ts';
import { atThickness, insertsInCores } from '../kit/inserts.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';
import { LEVEL } from './thicker-than-core.ts';

/** Thickness of all that lies in one hole of a core: an insert, and others over or under it. */
function inOneHole(context: RecipeContext, insert: LaidLayer, all: readonly LaidLayer[]): number | undefined {
  const own = valueOf(context.ask(layerFootprint, insert.key));
  if (own === undefined) return undefined;
  let height = 0;
  for (const other of all) {
    const footprint = valueOf(context.ask(layerFootprint, other.key));
    const thickness = valueOf(context.ask(layerThickness, other.key));
    if (footprint === undefined || thickness === undefined) return undefined;
    if (covers(footprint, own.placed.centre) === true) height += thickness;
  }
  return height;
}

export const insertThinnerThanCore = rule({
  name: 'insert/thinner-than-core',
  severity: 'warning',
  title: 'an insert does not fill its core',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const found of insertsInCores(context)) {
      const { insert, core, around } = found;
      // what it is bedded in fills what it lacks
      if (insert.layer.bedded !== undefined) continue;
      const height = inOneHole(context, insert, insertsOf(layers, core));
      if (height === undefined || height >= around - habitOf(context.bench, LEVEL)) continue;
      context.report({
        ...atThickness(context, found),
        message: text(
          '{insert} is {thick} thick in {core}, which is {around}: a hollow of {step} is left under the skin',
          {
            insert: insert.name,
            thick: metres(height),
            core: core.name,
            around: metres(around),
            step: metres(around - height),
          },
        ),
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { footprintOf, outOf, SLACK } from '../kit/geometry.ts';
import { layersOf, materialOf, onePerLine, valueOf } from '../kit/layers.ts';
import { runOutOf } from '../kit/run-out.ts';
import { arealWeight, metres } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** How far the patch that covers the insert best lies over its edge, less what it wants; m. */
function bestCover(context: RecipeContext, layers: readonly LaidLayer[], insert: LaidLayer): number | undefined {
  const own = footprintOf(context.bench, insert);
  const covers = layers
    .filter(({ layer }) => layer.kind === 'patch')
    .flatMap((patch) => {
      const by = outOf(own?.placed, footprintOf(context.bench, patch)?.placed)?.by;
      const weight = valueOf(context.ask(layerArealWeight, patch.key));
      // one that does not reach over the whole insert does not cover it
      return by === undefined || weight === undefined || by > SLACK ? [] : [-by - runOutOf(context.bench, weight) / 2];
    });
  return covers.length === 0 ? undefined : Math.max(...covers);
}

export const insertTaper = rule({
  name: 'insert/taper',
  severity: 'info',
  title: 'a hard insert ends abruptly under the skin',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const insert of onePerLine(
      layers.filter(({ layer }) => layer.kind === 'insert' && layer.chamfer === undefined),
    )) {
      if (materialOf(context, insert) === undefined) continue;
      const cover = bestCover(context, layers, insert);
      if (cover !== undefined && cover >= -SLACK) continue;
      // the builder says on the line that it is done by hand
      if (insert.layer.notes?.some((note) => /chamfer|taper/i.test(note)) === true) continue;
      context.report({
        at: insert.path,
        message:
          cover === undefined
            ? text(
                '{insert} ends square under a skin that goes straight over it: chamfer it, or lay a patch over it that runs out past its edge',
                { insert: insert.name },
              )
            : text(
                'the patch over {insert} ends {short} too near to its edge: {least} past it at least for each {each}, {usual} are usual',
                {
                  insert: insert.name,
                  short: metres(-cover),
                  least: metres(runOutOf(context.bench, 0.6) / 2),
                  usual: metres(runOutOf(context.bench, 0.6)),
                  each: arealWeight(0.6),
                },
              ),
        fixes: [
          cover === undefined ? context.edit.addClause('Add chamfer 20 deg', insert.path, 'chamfer 20 deg') : undefined,
        ],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { coreOf } from '../../../calc/stack/order.ts';
import { footprintOf, outOf, outOfPart, SLACK } from '../kit/geometry.ts';
import { layersOf, onePerLine } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const insertOffCore = rule({
  name: 'insert/off-core',
  severity: 'error',
  title: 'an insert lies beside the core that it belongs in',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const insert of onePerLine(layers.filter(({ layer }) => layer.kind === 'insert'))) {
      const core = coreOf(layers, insert);
      const around = core === undefined ? undefined : footprintOf(context.bench, core);
      const own = footprintOf(context.bench, insert);
      // one that hangs over the edge of the part is told of as that
      if (
        core === undefined ||
        around === undefined ||
        own === undefined ||
        own.whole ||
        (outOfPart(context.bench, insert) ?? 1) > SLACK
      )
        continue;
      const out = outOf(own.placed, around.placed)?.by;
      if (out === undefined || out + around.inset <= SLACK || (around.whole && core.layer.inset === undefined))
        continue;
      context.report({
        at: insert.path,
        message: text('{insert} stands {out} out of {core}, which ends {inset} inside the finished edge', {
          insert: insert.name,
          out: metres(out + around.inset),
          core: core.name,
          inset: metres(around.inset),
        }),
        related: [{ at: { entry: context.recipe.entry, path: core.path }, message: text('the core') }],
      });
    }
  },
});

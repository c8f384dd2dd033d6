import { text } from '../../../calc/figure/index.ts';
import { layersOf, ofKind, onePerLine } from '../kit/layers.ts';
import { offCore } from '../kit/off-core.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const insertOffCore = rule({
  name: 'insert/off-core',
  severity: 'error',
  title: 'an insert lies beside the core that it belongs in',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const insert of onePerLine(ofKind(layers, 'insert'))) {
      const off = offCore(context, layers, insert);
      if (off === undefined) continue;
      const { core, out, inset } = off;
      context.report({
        at: insert.path,
        message: text('{insert} stands {out} out of {core}, which ends {inset} inside the finished edge', {
          insert: insert.name,
          out: metres(out),
          core: core.name,
          inset: metres(inset),
        }),
        related: [{ at: { entry: context.recipe.entry, path: core.path }, message: text('the core') }],
      });
    }
  },
});

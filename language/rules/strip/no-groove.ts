import { text } from '../../../calc/figure/index.ts';
import { grooveOf } from '../../../calc/stack/order.ts';
import { WIDEST } from '../kit/core-gaps.ts';
import { isBedded } from '../kit/cores.ts';
import { footprintOf, overlapping } from '../kit/geometry.ts';
import { heightInGroove } from '../kit/grooves.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, ofKind, onePerLine } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const stripNoGroove = rule({
  name: 'strip/no-groove',
  severity: 'warning',
  title: 'a core rides on a strip that no groove takes up',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const strip of onePerLine(ofKind(layers, 'strip'))) {
      const core = layers.slice(strip.index + 1).find(({ layer }) => layer.kind !== 'strip' && layer.kind !== 'insert');
      if (core?.layer.kind !== 'core' || grooveOf(layers, strip) !== undefined || isBedded(context, core)) continue;
      const height = heightInGroove(context, layers, strip);
      const most = habitOf(context.bench, WIDEST);
      if (height === undefined || height <= most + 1e-9) continue;
      const [own, there] = [footprintOf(context.bench, strip)?.placed, footprintOf(context.bench, core)?.placed];
      if (overlapping(own, there) !== true) continue;
      const shown = { strip: strip.layer.name, core: core.name, height: metres(height), most: metres(most) };
      context.report({
        at: core.path,
        message: text(
          '{strip} is {height} thick below {core}, and no groove takes it up: the core rides on it, and over {most} there is a channel on both sides of it',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: strip.path },
            message: text('{strip} is {height} thick', shown),
          },
        ],
        fixes: [
          context.edit.addClause(
            text('Add {what}', { what: `groove for ${strip.layer.name}` }),
            core.path,
            `groove for ${strip.layer.name}`,
          ),
        ],
      });
    }
  },
});

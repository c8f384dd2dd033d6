import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { grooveOf } from '../../../calc/stack/order.ts';
import { LEVEL } from '../insert/thicker-than-core.ts';
import { heightInGroove } from '../kit/grooves.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, layersOf, ofKind, onePerLine, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const stripProudOfGroove = rule({
  name: 'strip/proud-of-groove',
  severity: 'warning',
  title: 'a strip is thicker than the core that its groove is in',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const strip of onePerLine(ofKind(layers, 'strip'))) {
      const core = grooveOf(layers, strip);
      const own = core === undefined ? undefined : heightInGroove(context, layers, strip);
      const around = core === undefined ? undefined : valueOf(context.ask(layerThickness, core.key));
      if (core === undefined || own === undefined || around === undefined) continue;
      const groove = core.layer.grooves?.find(({ strip: name }) => name === strip.name || name === strip.layer.name);
      const depth = groove?.depth?.si ?? around;
      if (own <= around && own - depth <= habitOf(context.bench, LEVEL) + 1e-9) continue;
      const shown = {
        strip: strip.name,
        thick: metres(own),
        core: core.name,
        around: metres(around),
        depth: metres(depth),
        step: metres(own - depth),
      };
      const related = [
        { at: { entry: context.recipe.entry, path: core.path }, message: text('the core with the groove') },
      ];
      if (own > around)
        context.report({
          at: strip.path,
          message: text(
            '{strip} is {thick} thick and stands proud of {core}, which has {around} to cut a groove in',
            shown,
          ),
          related,
        });
      else
        context.report({
          at: strip.path,
          message: text(
            '{strip} is {thick} thick in a groove of {depth}: it stands {step} proud of {core}, and the skin bridges beside it',
            shown,
          ),
          related,
          fixes: [context.edit.removeClause('Let the depth follow from the strip', clauseAt(core, 'depth'))],
        });
    }
  },
});

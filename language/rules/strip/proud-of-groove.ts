import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { grooveOf } from '../../../calc/stack/order.ts';
import { layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const stripProudOfGroove = rule({
  name: 'strip/proud-of-groove',
  severity: 'warning',
  title: 'a strip is thicker than the core that its groove is in',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const strip of onePerLine(layers.filter(({ layer }) => layer.kind === 'strip'))) {
      const core = grooveOf(layers, strip);
      const own = valueOf(context.ask(layerThickness, strip.key));
      const around = core === undefined ? undefined : valueOf(context.ask(layerThickness, core.key));
      if (core === undefined || own === undefined || around === undefined || own <= around) continue;
      context.report({
        at: strip.path,
        message: text('{strip} is {thick} thick and stands proud of {core}, which has {around} to cut a groove in', {
          strip: strip.name,
          thick: metres(own),
          core: core.name,
          around: metres(around),
        }),
        related: [{ at: { entry: context.recipe.entry, path: core.path }, message: text('the core with the groove') }],
      });
    }
  },
});

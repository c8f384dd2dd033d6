import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { namedLayers } from '../../../calc/stack/order.ts';
import { coresOf } from '../kit/cores.ts';
import { heightInGroove } from '../kit/grooves.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { metres, share } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Share of the core that a groove may take. From memory. */
const MOST: Usual = {
  habit: 'groove_depth',
  what: 'share of the core that a groove may take',
  value: share(0.5),
  source: 'from memory',
};

export const coreGrooveTooDeep = rule({
  name: 'core/groove-too-deep',
  severity: 'warning',
  title: 'a groove leaves too little of the core',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    const mostOfCore = habitOf(context.bench, MOST);
    for (const core of coresOf(context)) {
      if (core.layer.grooves === undefined) continue;
      const thickness = valueOf(context.ask(layerThickness, core.key));
      for (const groove of core.layer.grooves) {
        const strip = groove.strip === undefined ? undefined : namedLayers(layers, groove.strip)[0];
        const depth = groove.depth?.si ?? (strip === undefined ? undefined : heightInGroove(context, layers, strip));
        // a strip thicker than the core is told of as that
        if (thickness === undefined || depth === undefined || depth <= mostOfCore * thickness || depth > thickness)
          continue;
        context.report({
          at: groove.path,
          message: text('the groove is {depth} deep in a core of {thickness}: {left} are left below it', {
            depth: metres(depth),
            thickness: metres(thickness),
            left: metres(thickness - depth),
          }),
        });
      }
    }
  },
});

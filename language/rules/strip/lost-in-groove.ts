import { text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { namedLayers } from '../../../calc/stack/order.ts';
import { coresOf } from '../kit/cores.ts';
import { heightInGroove } from '../kit/grooves.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, layersOf, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** What resin levels out over a strip. */
export const LEVELLED: Usual = {
  habit: 'groove',
  what: 'depth that resin levels out over a strip',
  value: metres(0.0005),
  source: 'common practice',
};

export const stripLostInGroove = rule({
  name: 'strip/lost-in-groove',
  severity: 'warning',
  title: 'a groove is deeper than its strip is thick',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const core of coresOf(context)) {
      for (const groove of core.layer.grooves ?? []) {
        const depth = groove.depth?.si;
        if (depth === undefined) continue;
        const strip = groove.strip === undefined ? undefined : namedLayers(layers, groove.strip)[0];
        const thick = strip === undefined ? undefined : heightInGroove(context, layers, strip);
        if (strip === undefined || thick === undefined) continue;
        const around = valueOf(context.ask(layerThickness, core.key));
        // one that goes through the core is told of as that
        if (depth - thick <= habitOf(context.bench, LEVELLED) + 1e-9 || depth > (around ?? depth)) continue;
        const typed = clauseAt(core, 'depth');
        const shown = {
          depth: metres(depth),
          strip: strip.name,
          thick: metres(thick),
          left: metres(Number((depth - thick).toPrecision(2))),
        };
        context.report({
          at: context.edit.span(typed) === undefined ? groove.path : typed,
          message: text(
            'the groove is {depth} deep and {strip} {thick} thick: {left} of resin lie over it, or the skin dips in and the strip carries late',
            shown,
          ),
          related: [
            { at: { entry: context.recipe.entry, path: strip.path }, message: text('{strip} is {thick} thick', shown) },
          ],
          fixes: [context.edit.removeClause('Let the depth follow from the strip', typed)],
        });
      }
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight, layerCloth } from '../../../calc/laminate/fraction.figure.ts';
import { wetWithStyrene } from '../kit/cloths.ts';
import { coresOf, isBedded, stepsOn } from '../kit/cores.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

/** Wet mat of this weight beds a core, kg/m2. Common practice. */
const beds = 0.45;

export const coreNotBedded = rule({
  name: 'core/not-bedded',
  severity: 'warning',
  title: 'a core is laid by hand on a skin without bedding',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'hand') return;
    const layers = layersOf(context);
    for (const core of coresOf(context)) {
      const below = layers.slice(0, core.index).findLast(({ layer }) => layer.kind === 'ply');
      const cloth = below === undefined ? undefined : valueOf(context.ask(layerCloth, below.key));
      const weight = below === undefined ? undefined : valueOf(context.ask(layerArealWeight, below.key));
      if (below === undefined || cloth === undefined || (cloth.style === 'random' && (weight ?? 0) >= beds - 1e-9))
        continue;
      if (isBedded(context, core) || stepsOn(context, core, 'bag down', 'bag').length > 0) continue;
      const paste = wetWithStyrene(context, below) ? 'core_bedding_paste' : 'epoxy_fillet';
      context.report({
        at: core.path,
        message: text(
          '{core} is laid by hand on {below} with nothing to bed it in: paste, a wet mat of 450 g/m2, or a bag',
          { core: core.name, below: below.name },
        ),
        fixes: [context.edit.addClause(text('Add bedded {what}', { what: paste }), core.path, `bedded ${paste}`)],
      });
    }
  },
});

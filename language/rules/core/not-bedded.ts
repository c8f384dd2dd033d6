import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerArealWeight, layerCloth } from '../../../calc/laminate/fraction.figure.ts';
import { wetWithStyrene } from '../kit/cloths.ts';
import { coresOf, isBedded, stepsOn } from '../kit/cores.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { arealWeight } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const MAT: Usual = {
  habit: 'mat_bed',
  what: 'wet mat that beds a core',
  value: arealWeight(0.45),
  source: 'common practice',
};

export const coreNotBedded = rule({
  name: 'core/not-bedded',
  severity: 'warning',
  title: 'a core is laid by hand on a skin without bedding',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'hand') return;
    const beds = habitOf(context.bench, MAT);
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
          '{core} is laid by hand on {below} with nothing to bed it in: paste, a wet mat of {beds}, or a bag',
          { core: core.name, below: below.name, beds: arealWeight(beds) },
        ),
        fixes: [context.edit.addClause(text('Add bedded {what}', { what: paste }), core.path, `bedded ${paste}`)],
      });
    }
  },
});

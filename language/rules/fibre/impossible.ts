import { text } from '../../../calc/figure/index.ts';
import { layerCloth, layerFraction } from '../../../calc/laminate/fraction.figure.ts';
import type { ProcessKind } from '../../../calc/model/index.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { saidAt } from '../kit/fractions.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { share } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/**
 * The most fibre by volume that a process packs, for mat and for other cloth. Careful hand layup of cloth 60 % by weight of glass
 * (published), mat 35 % usual and 42 % at the most, vacuum alone 0.62 by volume: common practice and from memory.
 */
const most: Readonly<Record<ProcessKind, { readonly mat: number; readonly cloth: number }>> = {
  hand: { mat: 0.24, cloth: 0.4 },
  bagged: { mat: 0.3, cloth: 0.55 },
  infusion: { mat: 0.32, cloth: 0.62 },
  prepreg: { mat: 0.35, cloth: 0.66 },
};

const spoken: Readonly<Record<ProcessKind, string>> = {
  hand: 'hand layup',
  bagged: 'a wet layup under a bag',
  infusion: 'an infusion',
  prepreg: 'prepreg',
};

export const fibreImpossible = rule({
  name: 'fibre/impossible',
  severity: 'error',
  title: 'more fibre than the process packs',
  on: 'recipe',
  check(context) {
    const kind = context.recipe.process?.kind;
    if (kind === undefined) return;
    const told = new Set<string>();
    for (const laid of layersOf(context).filter(isCloth)) {
      const at = saidAt(context, laid);
      const cloth = valueOf(context.ask(layerCloth, laid.key));
      const fraction = valueOf(context.ask(layerFraction, laid.key));
      if (at === undefined || told.has(at) || cloth === undefined || fraction === undefined) continue;
      const limit = most[kind][cloth.style === 'random' ? 'mat' : 'cloth'];
      if (fraction.byVolume <= limit + 1e-9) continue;
      told.add(at);
      context.report({
        at,
        message: text(
          '{ply} would hold {weight} of fibre by weight, {volume} by volume; {process} packs {limit} by volume at the most',
          {
            ply: laid.name,
            weight: share(fraction.byWeight),
            volume: share(fraction.byVolume),
            process: spoken[kind],
            limit: share(limit),
          },
        ),
      });
    }
  },
});

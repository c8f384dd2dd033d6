import { text } from '../../../calc/figure/index.ts';
import { type LayerFraction, layerCloth, layerFraction } from '../../../calc/laminate/fraction.figure.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import type { ProcessKind } from '../../../calc/model/index.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { saidAt } from '../kit/fractions.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { mostPacked } from '../kit/packed.ts';
import { share } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';

const spoken: Readonly<Record<ProcessKind, string>> = {
  hand: 'hand layup',
  bagged: 'a wet layup under a bag',
  infusion: 'an infusion',
  prepreg: 'prepreg',
};

interface Said {
  readonly laid: LaidLayer;
  readonly fraction: LayerFraction;
  /** the most fibre by volume */
  readonly limit: number;
}

/** How thick layers are at the tightest that each packs, over how thick they are said to be. */
function packedThickness(context: RecipeContext, said: readonly Said[]): number {
  let [packed, thick] = [0, 0];
  for (const { laid, fraction, limit } of said) {
    const thickness = valueOf(context.ask(layerThickness, laid.key)) ?? 0;
    thick += thickness;
    packed += (thickness * fraction.byVolume) / limit;
  }
  return thick > 0 ? packed / thick : Number.POSITIVE_INFINITY;
}

export const fibreImpossible = rule({
  name: 'fibre/impossible',
  severity: 'error',
  title: 'more fibre than the process packs',
  on: 'recipe',
  check(context) {
    const kind = context.recipe.process?.kind;
    if (kind === undefined) return;
    for (const [at, layers] of Map.groupBy(layersOf(context).filter(isCloth), (laid) => saidAt(context, laid))) {
      if (at === undefined) continue;
      const said = layers.flatMap((laid) => {
        const cloth = valueOf(context.ask(layerCloth, laid.key));
        const fraction = valueOf(context.ask(layerFraction, laid.key));
        if (cloth === undefined || fraction === undefined) return [];
        return [{ laid, fraction, limit: mostPacked(context.bench, kind, cloth.style === 'random' ? 'mat' : 'cloth') }];
      });
      const over = said.find(({ fraction, limit }) => fraction.byVolume > limit + 1e-9);
      // a step says one share for all that it lays: a surface tissue between cloth takes what that leaves it
      if (over === undefined || (said.length > 1 && packedThickness(context, said) <= 1)) continue;
      const { laid, fraction, limit } = over;
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

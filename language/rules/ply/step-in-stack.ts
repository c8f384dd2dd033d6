import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { arealWeight } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Cloth that may end at one line, kg/m2: 25 mm of run-out for each 600 g/m2, from memory. `habit drop` sets the run-out. */
const atOneLine = 0.6;

export const plyStepInStack = rule({
  name: 'ply/step-in-stack',
  severity: 'warning',
  title: 'much cloth ends at one line',
  on: 'recipe',
  check(context) {
    const groups = new Map<string, LaidLayer[]>();
    for (const laid of layersOf(context).filter(isCloth)) {
      const { extent } = laid.layer;
      if (extent.kind !== 'zone' && extent.kind !== 'shape') continue;
      const key = JSON.stringify([extent.kind === 'zone' ? extent.zone : [extent.shape, extent.centre], laid.drop]);
      groups.set(key, [...(groups.get(key) ?? []), laid]);
    }
    for (const group of groups.values()) {
      const weights = group.map((laid) => valueOf(context.ask(layerArealWeight, laid.key)) ?? 0);
      const sum = weights.reduce((all, weight) => all + weight, 0);
      const last = group.at(-1);
      if (group.length < 2 || last === undefined || sum <= atOneLine + 1e-9) continue;
      context.report({
        at: last.path,
        message: text(
          '{plies} end at the same line, {sum} of cloth: over {most} the ends are stepped, 25 mm for each 600 g/m2',
          { plies: group.map(({ name }) => name).join(', '), sum: arealWeight(sum), most: arealWeight(atOneLine) },
        ),
        related: group
          .slice(0, -1)
          .map((laid) => ({ at: { entry: context.recipe.entry, path: laid.path }, message: text('ends there too') })),
      });
    }
  },
});

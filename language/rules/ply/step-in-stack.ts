import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { atOneLineOf, runOutOf } from '../kit/run-out.ts';
import { arealWeight, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const plyStepInStack = rule({
  name: 'ply/step-in-stack',
  severity: 'warning',
  title: 'much cloth ends at one line',
  on: 'recipe',
  check(context) {
    const pieces: { readonly laid: LaidLayer; readonly skin: number }[] = [];
    let skin = 0;
    for (const laid of layersOf(context)) {
      // the skins of a core carry by themselves: each is stepped on its own
      if (laid.layer.kind === 'core') skin++;
      const { kind } = laid.layer.extent;
      if ((kind === 'zone' || kind === 'shape') && isCloth(laid)) pieces.push({ laid, skin });
    }
    if (pieces.length < 2) return;
    const atOneLine = atOneLineOf(context.bench);
    const groups = new Map<string, LaidLayer[]>();
    for (const { laid, skin } of pieces) {
      const { extent } = laid.layer;
      const key = JSON.stringify([
        skin,
        extent.kind === 'shape' ? [extent.shape, extent.centre] : extent.kind === 'zone' ? extent.zone : undefined,
        laid.drop,
      ]);
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
          '{plies} end at the same line, {sum} of cloth: over {most} the ends are stepped, {runOut} for each {each}',
          {
            plies: group.map(({ name }) => name).join(', '),
            sum: arealWeight(sum),
            most: arealWeight(atOneLine),
            runOut: metres(runOutOf(context.bench, 0.6)),
            each: arealWeight(0.6),
          },
        ),
        related: group
          .slice(0, -1)
          .map((laid) => ({ at: { entry: context.recipe.entry, path: laid.path }, message: text('ends there too') })),
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { isRoving, wetWithStyrene } from '../kit/cloths.ts';
import { layersOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const stackRovingOnRoving = rule({
  name: 'stack/roving-on-roving',
  severity: 'warning',
  title: 'two woven rovings lie on each other without mat between',
  on: 'recipe',
  check(context) {
    const cloth = layersOf(context).filter((laid) => laid.layer.kind === 'ply');
    const told = new Set<string>();
    for (const [i, laid] of cloth.entries()) {
      const before = cloth[i - 1];
      if (
        before === undefined ||
        before.index !== laid.index - 1 ||
        told.has(laid.path) ||
        !isRoving(context, before) ||
        !isRoving(context, laid) ||
        !wetWithStyrene(context, laid)
      )
        continue;
      told.add(laid.path);
      context.report({
        at: laid.path,
        message: text('{ply} lies on {before} with no mat between: two woven rovings in polyester peel apart', {
          ply: laid.name,
          before: before.name,
        }),
        related: [{ at: { entry: context.recipe.entry, path: before.path }, message: text('the roving below') }],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { isRoving } from '../kit/cloths.ts';
import { layersOf } from '../kit/layers.ts';
import { addStep } from '../kit/missing-step.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const stackEndsOnRoving = rule({
  name: 'stack/ends-on-roving',
  severity: 'warning',
  title: 'a bond follows on a face of woven roving',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const bond = firstOf(steps, 'bond', 'fillet');
    if (bond === undefined || firstOf(steps, 'peel') !== undefined) return;
    const last = layersOf(context).findLast(({ layer }) => layer.kind === 'ply');
    if (last === undefined || !isRoving(context, last)) return;
    context.report({
      at: last.path,
      message: text(
        '{ply} is the last ply, a woven roving, and a bond follows on it: it holds on the high spots of the weave only; end on mat, or lay peel ply',
        { ply: last.name },
      ),
      related: [{ at: { entry: context.recipe.entry, path: bond.step.path }, message: text('the bond') }],
      fixes: [
        context.edit.together(
          'Lay peel ply and pull it before the bond',
          addStep(context, 'peel', 'peel nylon_85, 40 mm past edge'),
          context.edit.lineBefore('', bond.step.path, 'pull peel'),
        ),
      ],
    });
  },
});

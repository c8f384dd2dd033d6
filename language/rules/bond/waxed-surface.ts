import { text } from '../../../calc/figure/figure.ts';
import { onCured, spoken } from '../kit/bonds.ts';
import { before, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const bondWaxedSurface = rule({
  name: 'bond/waxed-surface',
  severity: 'error',
  title: 'a bond on a face that waxed resin has left',
  on: 'recipe',
  check(context) {
    const all = stepsOf(context);
    for (const { on, steps } of onCured(context)) {
      const coats = before(all, on).flatMap((worked) => worked.layers);
      const last = coats.at(-1);
      // a face that nothing keys at all is reported by bond/not-keyed; peel ply that is pulled leaves the wax where it was
      const sanded = steps.some(({ step }) => step.verb === 'sand');
      const pulled = steps.some(({ step }) => step.verb === 'pull peel');
      if (last?.layer.waxed !== true || sanded || !pulled) continue;
      context.report({
        at: on.step.path,
        message: text(
          '{what} goes on {coat}, which is waxed: pulling the peel ply does not take the wax off; sand to below it',
          { what: spoken(on), coat: last.name },
        ),
        related: [{ at: { entry: context.recipe.entry, path: last.path }, message: text('the waxed coat') }],
        fixes: [context.edit.lineBefore('Sand it first', on.step.path, 'sand 80 grit')],
      });
    }
  },
});

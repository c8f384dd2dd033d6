import { text } from '../../../calc/figure/figure.ts';
import { onCured, spoken } from '../kit/bonds.ts';
import { keyed } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const bondNotKeyed = rule({
  name: 'bond/not-keyed',
  severity: 'error',
  title: 'a bond on a cured face that is not keyed',
  on: 'recipe',
  check(context) {
    const told = new Set<string>();
    for (const { cure, on, steps } of onCured(context)) {
      // several bonds after one sanding are keyed by it; one finding a cured face
      if (keyed(steps) || told.has(cure.step.path)) continue;
      told.add(cure.step.path);
      context.report({
        at: on.step.path,
        message: text(
          '{what} goes on a cured face that is neither sanded nor fresh from under peel ply: it peels off',
          { what: spoken(on) },
        ),
        related: [
          { at: { entry: context.recipe.entry, path: cure.step.path }, message: text('the face is hard from here on') },
        ],
        fixes: [context.edit.lineBefore('Sand it first', on.step.path, 'sand 80 grit')],
      });
    }
  },
});

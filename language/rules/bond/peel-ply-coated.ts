import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { onCured, spoken } from '../kit/bonds.ts';
import { allOf, before, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const bondPeelPlyCoated = rule({
  name: 'bond/peel-ply-coated',
  severity: 'warning',
  title: 'a bond on a face from under release-treated peel ply',
  on: 'recipe',
  check(context) {
    for (const { on, steps } of onCured(context)) {
      const peel = allOf(before(stepsOf(context), on), 'peel').at(-1);
      const name = peel === undefined ? undefined : subject(peel.step);
      const material = name === undefined ? undefined : context.bench.material(name);
      const pulled = steps.some(({ step }) => step.verb === 'pull peel');
      const sanded = steps.some(({ step }) => step.verb === 'sand');
      if (
        peel === undefined ||
        material?.sizing === undefined ||
        material.sizing.value !== 'release' ||
        !pulled ||
        sanded
      )
        continue;
      context.report({
        at: on.step.path,
        message: text(
          '{what} goes on the face that {peel} leaves: its release stays on the laminate; use a plain peel ply, or sand',
          { what: spoken(on), peel: material.name },
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: peel.step.path },
            message: text('{peel} is laid here', { peel: material.name }),
          },
          { at: material.sizing.at, message: text('{peel} is release treated', { peel: material.name }) },
        ],
        fixes: [context.edit.lineBefore('Sand it first', on.step.path, 'sand 80 grit')],
      });
    }
  },
});

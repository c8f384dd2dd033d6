import { text } from '../../../calc/figure/index.ts';
import { drilledIn, isSealed } from '../kit/drilled.ts';
import { materialOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const coreUnsealedHole = rule({
  name: 'core/unsealed-hole',
  severity: 'warning',
  title: 'a hole into wood is not sealed',
  on: 'recipe',
  check(context) {
    for (const drilled of drilledIn(context)) {
      const { into, step } = drilled;
      if (
        into.layer.kind !== 'insert' ||
        materialOf(context, into)?.moisture === undefined ||
        isSealed(context, drilled)
      )
        continue;
      context.report({
        at: step.path,
        message: text('the holes in {insert} are not sealed: {material} drinks through their walls', {
          insert: into.name,
          material: into.layer.material ?? '',
        }),
        fixes: [context.edit.addClause('Add sealed', step.path, 'sealed')],
      });
    }
  },
});

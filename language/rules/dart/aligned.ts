import { text } from '../../../calc/figure/index.ts';

import { clauseAt, layersOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const dartAligned = rule({
  name: 'dart/aligned',
  severity: 'warning',
  title: 'the darts of two wrapped plies fall on each other',
  on: 'recipe',
  check(context) {
    const wrapped = layersOf(context).filter(
      ({ layer }) => layer.extent.kind === 'wrap' && typeof layer.darts === 'number' && layer.darts > 0,
    );
    for (const [i, laid] of wrapped.entries()) {
      const before = wrapped[i - 1];
      if (before === undefined || before.layer.darts !== laid.layer.darts || before.path === laid.path) continue;
      context.report({
        at: clauseAt(laid, 'darts'),
        message: text(
          '{ply} has as many darts as {before} below it, {darts}, shared alike over the outline: they fall on each other',
          { ply: laid.name, before: before.name, darts: Number(laid.layer.darts) },
        ),
        related: [
          { at: { entry: context.recipe.entry, path: clauseAt(before, 'darts') }, message: text('the darts below') },
        ],
        fixes: [
          context.edit.replace(
            text('Write darts {what}', { what: Number(laid.layer.darts) + 1 }),
            clauseAt(laid, 'darts'),
            `darts ${Number(laid.layer.darts) + 1}`,
          ),
        ],
      });
    }
  },
});

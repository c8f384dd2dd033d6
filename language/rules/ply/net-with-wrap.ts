import { text } from '../../../calc/figure/index.ts';

import { clauseAt, layersOf, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const plyNetWithWrap = rule({
  name: 'ply/net-with-wrap',
  severity: 'warning',
  title: 'a ply is said to be net and to be wrapped',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(layersOf(context))) {
      const { clauses, extent } = laid.layer;
      if (extent.kind === 'zone' || !clauses.some(({ word }) => word === 'net')) continue;
      const other = clauses.find(({ word }) => word === 'wrap') ?? clauses.find(({ word }) => word === 'to');
      if (other === undefined) continue;
      context.report({
        at: clauseAt(laid, 'net'),
        message:
          other.word === 'wrap'
            ? text('{ply} cannot end at the finished edge and be wrapped round it', { ply: laid.name })
            : text('{ply} cannot end at the finished edge and run out to the trim', { ply: laid.name }),
        related: [{ at: { entry: context.recipe.entry, path: other.path }, message: text('the other one') }],
        fixes: [context.edit.removeClause('Take net away', clauseAt(laid, 'net'))],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { isCloth, reachesEdge, wrapTarget } from '../../../calc/stack/order.ts';
import { clauseAt, layersOf, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const wrapUncoveredLanding = rule({
  name: 'wrap/uncovered-landing',
  severity: 'warning',
  title: 'nothing covers the landing of a ply that is wrapped onto a layer',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const laid of onePerLine(layers)) {
      const { extent } = laid.layer;
      if (extent.kind !== 'wrap' || extent.way !== 'onto') continue;
      const target = wrapTarget(layers, laid);
      // a core without a ply on it is told of as that
      if (target === undefined || target.index < laid.index || target.layer.kind === 'core') continue;
      if (layers.slice(target.index + 1).some((later) => isCloth(later) && reachesEdge(later))) continue;
      const clause = context.edit.span(clauseAt(laid, 'wrap'));
      const words = clause === undefined ? '' : context.edit.text.slice(clause.offset, clause.end);
      context.report({
        at: clauseAt(laid, 'wrap'),
        message: text(
          '{ply} lands on {target}, and no later ply covers the landing; one that lands on top of all says `wrap over`',
          { ply: laid.name, target: target.name },
        ),
        fixes: [
          words.includes(' onto ')
            ? context.edit.replace('Write wrap over', clauseAt(laid, 'wrap'), words.replace(' onto ', ' over '))
            : undefined,
        ],
      });
    }
  },
});

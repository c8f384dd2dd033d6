import { dartNeed } from '../../../calc/cloth/darts.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const dartMissing = rule({
  name: 'dart/missing',
  severity: 'warning',
  title: 'a wrapped ply has too much cloth at the bends and no darts',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      if (laid.layer.darts !== undefined && laid.layer.darts !== 0) continue;
      const need = valueOf(context.ask(dartNeed, laid.key));
      if (need === undefined || need.darts === 0) continue;
      const shown = {
        ply: laid.name,
        excess: metres(need.excess),
        darts: need.darts,
        width: metres(need.width),
      };
      context.report({
        at: laid.layer.darts === 0 ? clauseAt(laid, 'darts') : clauseAt(laid, 'wrap'),
        message:
          need.darts === 1
            ? text(
                '{ply} has {excess} too much length at its free edge, more than it takes up by shear: a dart of {width} is needed',
                shown,
              )
            : text(
                '{ply} has {excess} too much length at its free edge, more than it takes up by shear: {darts} darts of {width} are needed',
                shown,
              ),
        fixes: [
          laid.layer.darts === 0
            ? context.edit.replace('Write darts auto', clauseAt(laid, 'darts'), 'darts auto')
            : context.edit.addClause('Add darts auto', laid.path, 'darts auto'),
        ],
      });
    }
  },
});

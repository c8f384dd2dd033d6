import { dartNeed } from '../../../calc/cloth/darts.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const dartTooWide = rule({
  name: 'dart/too-wide',
  severity: 'warning',
  title: 'a bend has darts that are too wide',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      const { darts } = laid.layer;
      if (typeof darts !== 'number' || darts === 0) continue;
      const need = valueOf(context.ask(dartNeed, laid.key));
      const wanted =
        need === undefined
          ? Infinity
          : Math.ceil(
              need.bends.reduce((sum, bend) => sum + (bend.excess > 0 ? bend.left / bend.widest : 0), 0) - 1e-9,
            );
      // fewer than that is told of as too few
      if (need?.typed === undefined || need.typed.width <= need.typed.widest + 1e-9 || darts < wanted) continue;
      const shown = { darts, width: metres(need.typed.width), widest: metres(need.typed.widest) };
      context.report({
        at: clauseAt(laid, 'darts'),
        message:
          darts === 1
            ? text('1 dart is enough by number, but it is {width} wide; at most {widest}', shown)
            : text(
                '{darts} darts are enough by number, but shared over the bends one is {width} wide; at most {widest}',
                shown,
              ),
        fixes: [context.edit.replace('Write darts auto', clauseAt(laid, 'darts'), 'darts auto')],
      });
    }
  },
});

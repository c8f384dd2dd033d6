import { dartNeed } from '../../../calc/cloth/darts.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const dartTooFew = rule({
  name: 'dart/too-few',
  severity: 'warning',
  title: 'fewer darts than the bends need',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      const { darts } = laid.layer;
      if (typeof darts !== 'number' || darts === 0) continue;
      const need = valueOf(context.ask(dartNeed, laid.key));
      const wanted =
        need === undefined
          ? 0
          : Math.ceil(
              need.bends.reduce((sum, bend) => sum + (bend.excess > 0 ? bend.left / bend.widest : 0), 0) - 1e-9,
            );
      if (need?.typed === undefined || need.typed.width <= need.typed.widest + 1e-9 || darts >= wanted) continue;
      const enough = need.bends.reduce(
        (sum, bend) => sum + (bend.excess > 0 ? Math.max(1, Math.ceil(bend.left / bend.widest - 1e-9)) : 0),
        0,
      );
      const shown = {
        darts,
        width: metres(need.typed.width),
        widest: metres(need.typed.widest),
        enough,
      };
      context.report({
        at: clauseAt(laid, 'darts'),
        message:
          darts === 1
            ? text('1 dart would have to be {width} wide; at most {widest}: {enough} are needed', shown)
            : text('{darts} darts would have to be {width} wide each; at most {widest}: {enough} are needed', shown),
        fixes: [context.edit.replace('Write darts auto', clauseAt(laid, 'darts'), 'darts auto')],
      });
    }
  },
});

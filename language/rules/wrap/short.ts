import { wrapReach } from '../../../calc/cloth/wrap.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { clauseAt, layersOf, onePerLine, typedLength, valueOf, wrappedIn } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Less than the width of a marker's line, m. */
const asGoodAsRight = 0.0005;

export const wrapShort = rule({
  name: 'wrap/short',
  severity: 'error',
  title: 'a wrapped ply is cut too short to land',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      if (laid.layer.oversize === undefined) continue;
      const wrap = valueOf(context.ask(wrapReach, laid.key));
      if (wrap?.typed === undefined || wrap.typed >= wrap.needed - asGoodAsRight) continue;
      const at = clauseAt(laid, 'oversize');
      context.report({
        at,
        message: text(
          '{ply} reaches {reach} past the outline; wrapping {height} of edge and landing {landing} on {onto} needs {needed}; it is {short} too short',
          {
            ply: laid.name,
            reach: metres(wrap.typed),
            height: metres(wrap.height),
            landing: metres(wrap.wanted),
            onto: wrap.onto,
            needed: metres(wrap.needed),
            short: metres(wrap.needed - wrap.typed),
          },
        ),
        fixes: [
          context.edit.replace(
            text('Write oversize {what}', { what: typedLength(wrap.needed) }),
            at,
            `oversize ${typedLength(wrap.needed)}`,
          ),
          context.edit.removeClause('Leave it to be computed', at),
        ],
      });
    }
  },
});

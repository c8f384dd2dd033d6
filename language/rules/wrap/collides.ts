import { wrapReach } from '../../../calc/cloth/wrap.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { halfWidth, partPlaced } from '../kit/geometry.ts';
import { clauseAt, layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const wrapCollides = rule({
  name: 'wrap/collides',
  severity: 'warning',
  title: 'the landings of a wrapped ply meet where the part is narrow',
  on: 'recipe',
  check(context) {
    const half = halfWidth(partPlaced(context.bench));
    if (half === undefined) return;
    for (const laid of onePerLine(layersOf(context))) {
      if (laid.layer.extent.kind !== 'wrap') continue;
      const wrap = valueOf(context.ask(wrapReach, laid.key));
      if (wrap === undefined || wrap.landing <= half) continue;
      context.report({
        at: clauseAt(laid, 'wrap'),
        message: text(
          '{ply} lands {landing} from each side of a part that is {width} wide: the two landings lie over each other by {over}',
          {
            ply: laid.name,
            landing: metres(wrap.landing),
            width: metres(2 * half),
            over: metres(2 * (wrap.landing - half)),
          },
        ),
      });
    }
  },
});

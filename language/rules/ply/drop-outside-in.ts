import { text } from '../../../calc/figure/index.ts';
import { coveredBy, isCloth, reachesEdge } from '../../../calc/stack/order.ts';
import { layersOf, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const plyDropOutsideIn = rule({
  name: 'ply/drop-outside-in',
  severity: 'warning',
  title: 'plies that grow shorter end uncovered',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const laid of onePerLine([...layers].reverse())) {
      if (laid.layer.kind !== 'ply') continue;
      const smaller = laid.drop.around > 0 || Object.values(laid.drop.ends).some((by) => by > 0);
      if (
        !smaller ||
        coveredBy(layers.filter(isCloth), laid) !== undefined ||
        layers.slice(laid.index + 1).some((later) => isCloth(later) && reachesEdge(later))
      )
        continue;
      context.report({
        at: laid.path,
        message: text(
          '{ply} ends inside the part and no ply covers it: the shorter plies lie below, a whole one goes over their ends',
          { ply: laid.name },
        ),
      });
    }
  },
});

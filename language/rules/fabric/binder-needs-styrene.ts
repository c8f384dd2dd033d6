import { text } from '../../../calc/figure/index.ts';
import { hasStyrene, resinOf } from '../kit/cloths.ts';
import { factValue, layersOf, materialOf, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const fabricBinderNeedsStyrene = rule({
  name: 'fabric/binder-needs-styrene',
  severity: 'warning',
  title: 'a mat whose binder only styrene dissolves, in epoxy',
  on: 'recipe',
  check(context) {
    const told = new Set<string>();
    for (const laid of onePerLine(layersOf(context))) {
      if (told.has(laid.layer.material ?? '')) continue;
      const binder = factValue(materialOf(context, laid)?.binder);
      const resin = binder === 'styrene_soluble' ? resinOf(context, laid) : undefined;
      if (resin === undefined || hasStyrene(resin)) continue;
      told.add(laid.layer.material ?? '');
      context.report({
        at: `${laid.path}.material`,
        message: text(
          'the binder of {material} dissolves in styrene, and {resin} has none: the mat stays stiff and white; powder-bound or stitched mat',
          { material: laid.layer.material ?? '', resin: resin.name },
        ),
      });
    }
  },
});

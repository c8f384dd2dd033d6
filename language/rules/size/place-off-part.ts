import { text } from '../../../calc/figure/index.ts';
import { outOfPart, SLACK } from '../kit/geometry.ts';
import { layersOf, onePerLine } from '../kit/layers.ts';
import { insideAtBase } from '../kit/outside.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const sizePlaceOffPart = rule({
  name: 'size/place-off-part',
  severity: 'error',
  title: 'what fits at the base size stands off the part in another size',
  on: 'recipe',
  check(context) {
    if (context.recipe.size === undefined) return;
    for (const laid of onePerLine(layersOf(context))) {
      const by = outOfPart(context.bench, laid);
      if (by === undefined || by <= SLACK || !insideAtBase(context, laid.path)) continue;
      context.report({
        at: laid.path,
        message: text(
          '{layer} lies on the part in the recipe as written and stands {out} off it here; count its place from an end, or change it in the size',
          { layer: laid.name, out: metres(by) },
        ),
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import { shapeOnPart } from '../../../calc/outline/part.figure.ts';
import { outOf, overlapping, partPlaced, SLACK } from '../kit/geometry.ts';
import { valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const outlineCutoutOutside = rule({
  name: 'outline/cutout-outside',
  severity: 'error',
  title: 'a cutout lies over the edge of the part, or over another cutout',
  on: 'recipe',
  check(context) {
    const typed = context.recipe.part?.cutouts ?? [];
    if (typed.length === 0) return;
    const part = partPlaced(context.bench);
    const { entry } = context.recipe;
    const cutouts = typed.map(({ path, ...given }) => ({
      path,
      placed: valueOf(shapeOnPart(context.bench, 'a cutout', given, { entry, path })),
    }));
    for (const [i, { path, placed }] of cutouts.entries()) {
      const out = outOf(placed, part)?.by;
      const other =
        placed === undefined
          ? undefined
          : cutouts.slice(0, i).find((before) => overlapping(placed, before.placed) === true);
      if (out !== undefined && out > SLACK)
        context.report({
          at: path,
          message: text('this cutout stands {out} out over the finished edge', { out: metres(out) }),
        });
      else if (other !== undefined) {
        context.report({
          at: path,
          message: text('this cutout lies over another one'),
          related: [{ at: { entry, path: other.path }, message: text('the other cutout') }],
        });
      }
    }
  },
});

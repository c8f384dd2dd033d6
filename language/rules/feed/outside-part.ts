import { text } from '../../../calc/figure/figure.ts';
import { linesOf } from '../kit/lines.ts';
import { sheetOf } from '../kit/sheets.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const feedOutsidePart = rule({
  name: 'feed/outside-part',
  severity: 'warning',
  title: 'a feed lies where no mesh takes its resin',
  on: 'recipe',
  check(context) {
    const mesh = sheetOf(context, 'mesh');
    if (mesh === undefined) return;
    for (const feed of linesOf(context, 'feed')) {
      const nearest = feed.outside.reduce((least, far) => Math.min(least, far), Number.POSITIVE_INFINITY);
      if (feed.outside.length === 0 || nearest <= 0 || nearest <= mesh.past + 1e-9) continue;
      const shown = { feed: feed.name, far: metres(nearest) };
      context.report({
        at: feed.worked.step.path,
        message: text(
          '{feed} lies {far} outside the part, and the mesh does not reach it: the resin has only peel ply to run in',
          shown,
        ),
        related: [
          { at: { entry: context.recipe.entry, path: mesh.step.path }, message: text('the mesh ends before it') },
        ],
      });
    }
  },
});

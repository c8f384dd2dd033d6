import { text } from '../../../calc/figure/figure.ts';
import { linesOf } from '../kit/lines.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const feedOnPart = rule({
  name: 'feed/on-part',
  severity: 'warning',
  title: 'a feed lies on the laminate itself',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    // a process with neither peel ply nor mesh is told by their own rules
    const cover = firstOf(steps, 'peel', 'mesh');
    const cloth = firstOf(steps, 'lay cloth');
    if (cover === undefined || cloth === undefined) return;
    for (const feed of linesOf(context, 'feed')) {
      const at = steps.indexOf(feed.worked);
      if (steps.indexOf(cover) < at || steps.indexOf(cloth) >= at || !feed.outside.some((far) => far < 0)) continue;
      context.report({
        at: feed.worked.step.path,
        message: text(
          '{feed} is laid before peel ply and mesh, straight on the laminate: it leaves a print line and is cured in',
          { feed: feed.name },
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: cover.step.path },
            message: text('what has to lie under it comes here'),
          },
        ],
        fixes: [
          context.edit.moveBefore(
            'Lay it over peel ply and mesh',
            feed.worked.step.path,
            steps[steps.findLastIndex(({ classes }) => classes.has('peel') || classes.has('mesh')) + 1]?.step.path ??
              feed.worked.step.path,
          ),
        ],
      });
    }
  },
});

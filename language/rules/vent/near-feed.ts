import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { linesOf, nearest } from '../kit/lines.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const LEAST: Usual = {
  habit: 'vent_gap',
  what: 'between feed and vent',
  value: metres(0.075),
  source: "pump maker's note on brakes: gaps of 75 mm on small parts, about 300 mm on large ones",
};

export const ventNearFeed = rule({
  name: 'vent/near-feed',
  severity: 'warning',
  title: 'a vent so near a feed that it drinks the resin',
  on: 'recipe',
  check(context) {
    const least = usual(context.bench, LEAST);
    if (!isKnown(least)) return;
    for (const vent of linesOf(context, 'vent')) {
      for (const feed of linesOf(context, 'feed')) {
        const way = nearest(feed, vent);
        if (!Number.isFinite(way) || way >= least.value - 1e-9) continue;
        const shown = { vent: vent.name, feed: feed.name, way: metres(Math.max(0, way)), least: metres(least.value) };
        context.report({
          at: vent.worked.step.path,
          message: text(
            '{vent} comes within {way} of {feed}: under {least} it drinks the resin before the part is full',
            shown,
          ),
          related: [
            {
              at: { entry: context.recipe.entry, path: feed.worked.step.path },
              message: text('{feed} lies here', shown),
            },
          ],
        });
      }
    }
  },
});

import { text } from '../../../calc/figure/figure.ts';
import { turnsOf } from '../kit/infusing.ts';
import { linesOf } from '../kit/lines.ts';
import { rule } from '../rule.ts';

export const feedClosingOrder = rule({
  name: 'feed/closing-order',
  severity: 'warning',
  title: 'the vent is clamped while a feed is open',
  on: 'recipe',
  check(context) {
    const feeds = linesOf(context, 'feed');
    const vents = linesOf(context, 'vent');
    const clamped = turnsOf(context, 'clamp');
    const vent = clamped.find(({ name }) => vents.some((line) => line.name === name));
    if (vent === undefined) return;
    const earlier = clamped.slice(0, clamped.indexOf(vent));
    const open = feeds.find(
      ({ name }) =>
        turnsOf(context, 'open').some((turn) => turn.name === name) && !earlier.some((turn) => turn.name === name),
    );
    if (open === undefined) return;
    const shown = { vent: vent.name, feed: open.name };
    context.report({
      at: vent.step.path,
      message: text(
        '{vent} is clamped while {feed} is open: the bag fills to the pressure of the air, goes thick and lets the laminate swell; clamp the feed first, keep the vacuum to the gel',
        shown,
      ),
      related: [
        {
          at: { entry: context.recipe.entry, path: open.worked.step.path },
          message: text('{feed} is still open', shown),
        },
      ],
    });
  },
});

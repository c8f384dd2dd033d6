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
    const clamped = turnsOf(context, 'clamp');
    if (clamped.length === 0) return;
    const vents = linesOf(context, 'vent');
    // a vent that resin has come to is shut while another one goes on drawing
    const shut = clamped.filter(({ name }) => vents.some((line) => line.name === name));
    const vent = vents.every(({ name }) => shut.some((turn) => turn.name === name)) ? shut.at(-1) : undefined;
    if (vent === undefined) return;
    const earlier = clamped.slice(0, clamped.indexOf(vent));
    const opened = turnsOf(context, 'open');
    const open = linesOf(context, 'feed').find(
      ({ name }) => opened.some((turn) => turn.name === name) && !earlier.some((turn) => turn.name === name),
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

import { text } from '../../../calc/figure/figure.ts';
import { turnsOf } from '../kit/infusing.ts';
import { liesBetween, linesOf, toLine } from '../kit/lines.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const feedOpenedBeforeFront = rule({
  name: 'feed/opened-before-front',
  severity: 'warning',
  title: 'a second feed is opened before the front has passed it',
  on: 'recipe',
  check(context) {
    const feeds = linesOf(context, 'feed');
    const opened = turnsOf(context, 'open').filter(({ name }) => feeds.some((feed) => feed.name === name));
    const first = feeds.find(({ name }) => name === opened[0]?.name);
    if (first === undefined) return;
    for (const turn of opened.slice(1)) {
      const feed = feeds.find(({ name }) => name === turn.name);
      const way = feed?.points.reduce(
        (least, point) => Math.min(least, toLine(point, first.points)),
        Number.POSITIVE_INFINITY,
      );
      const front = turn.when?.point;
      const come = front === undefined ? undefined : toLine(front, first.points);
      const tooSoon =
        turn.when === undefined ||
        (come !== undefined && way !== undefined && Number.isFinite(way) && come < way - 1e-9);
      if (!tooSoon || way === undefined || !Number.isFinite(way)) continue;
      // fronts that are to meet close on a vent that lies between them
      if (
        turn.when === undefined &&
        feed !== undefined &&
        linesOf(context, 'vent').some((vent) => liesBetween(vent, first, feed))
      )
        continue;
      const shown = {
        feed: turn.name,
        first: first.name,
        way: metres(way),
        ...(come === undefined ? {} : { come: metres(come) }),
      };
      context.report({
        at: turn.step.path,
        message:
          come === undefined
            ? text(
                '{feed} is opened together with {first}, {way} away: two fronts meet and shut in a dry pocket; open it when the front has passed it',
                shown,
              )
            : text(
                '{feed} is opened when the front has come {come} from {first}: it lies {way} away, and between the fronts a dry pocket is shut in',
                shown,
              ),
        related: [
          {
            at: { entry: context.recipe.entry, path: feed?.worked.step.path ?? turn.step.path },
            message: text('{feed} lies here', shown),
          },
        ],
      });
    }
  },
});

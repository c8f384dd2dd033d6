import { isKnown, text } from '../../../calc/figure/figure.ts';
import { coatsAndNext } from '../kit/coats.ts';
import { aboutTime } from '../kit/shown.ts';
import { gapBetween, windowOf } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const coatLaminatedEarly = rule({
  name: 'coat/laminated-early',
  severity: 'error',
  title: 'the first layer comes before the gelcoat is ready for it',
  on: 'recipe',
  check(context) {
    for (const { coat, next } of coatsAndNext(context)) {
      const window = windowOf(context, coat.resin.laminate);
      const gap = gapBetween(context, coat.worked, next.worked);
      if (window === undefined || !isKnown(gap) || gap.value.untilState || gap.value.time >= 0.98 * window.low)
        continue;
      const shown = {
        layer: next.laid.name,
        coat: coat.resin.name,
        gap: aboutTime(gap.value.time),
        ready: aboutTime(window.low),
      };
      context.report({
        at: next.worked.step.path,
        message:
          gap.value.time < 60
            ? text(
                '{layer} goes on the wet gelcoat: {coat} is ready after {ready}, when a gloved finger comes away clean',
                shown,
              )
            : text(
                '{layer} goes on after {gap}: {coat} is ready after {ready}, when a gloved finger comes away clean',
                shown,
              ),
        related: [
          {
            at: { entry: context.recipe.entry, path: coat.worked.step.path },
            message: text('{coat} is put on here', shown),
          },
          { at: window.fact.at, message: text('{coat}: from when it may be laid on', shown) },
        ],
        fixes: [context.edit.lineBefore('Wait until it is tacky', next.worked.step.path, 'wait until tacky')],
      });
    }
  },
});

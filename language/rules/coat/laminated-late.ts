import { isKnown, text } from '../../../calc/figure/figure.ts';
import { coatsAndNext } from '../kit/coats.ts';
import { aboutTime } from '../kit/shown.ts';
import { gapBetween, keyed, windowOf } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const coatLaminatedLate = rule({
  name: 'coat/laminated-late',
  severity: 'warning',
  title: 'the first layer comes after the window of the gelcoat',
  on: 'recipe',
  check(context) {
    for (const { coat, next } of coatsAndNext(context)) {
      const window = windowOf(context, coat.resin.laminate);
      const gap = gapBetween(context, coat.worked, next.worked);
      if (window?.high === undefined || !isKnown(gap) || gap.value.time <= 1.02 * window.high || keyed(gap.value.steps))
        continue;
      const shown = {
        layer: next.laid.name,
        coat: coat.resin.name,
        gap: aboutTime(gap.value.time),
        latest: aboutTime(window.high),
      };
      context.report({
        at: next.worked.step.path,
        message: text(
          '{layer} goes on after {gap}: {coat} bonds by itself until {latest}; key it lightly, or start again',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: coat.worked.step.path },
            message: text('{coat} is put on here', shown),
          },
          { at: window.fact.at, message: text('{coat}: until when it may be laid on', shown) },
        ],
        fixes: [context.edit.lineBefore('Key it first', next.worked.step.path, `sand ${coat.laid.name} 240 grit`)],
      });
    }
  },
});

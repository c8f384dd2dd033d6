import { isKnown, text } from '../../../calc/figure/figure.ts';
import { gelTimeAt } from '../../../calc/resin/time.figure.ts';
import { aboutTime } from '../kit/shown.ts';
import { gapBetween, wettedLayers, windowOf } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const coatBetweenCoats = rule({
  name: 'coat/between-coats',
  severity: 'warning',
  title: 'a second coat goes on one that has gelled but not cured',
  on: 'recipe',
  check(context) {
    const wetted = wettedLayers(context);
    wetted.forEach((coat, i) => {
      const next = wetted[i + 1];
      if (
        next === undefined ||
        coat.resin.kind !== 'gelcoat' ||
        next.resin.kind !== 'gelcoat' ||
        coat.worked === next.worked
      )
        return;
      const gel = gelTimeAt(context.bench, coat.resin.name, coat.worked.step.path);
      const window = windowOf(context, coat.resin.laminate);
      const gap = gapBetween(context, coat.worked, next.worked);
      if (!isKnown(gel) || window === undefined || !isKnown(gap) || gap.value.untilState) return;
      if (gap.value.time <= gel.value || gap.value.time >= 0.98 * window.low) return;
      const shown = {
        coat: coat.laid.name,
        next: next.laid.name,
        gap: aboutTime(gap.value.time),
        gel: aboutTime(gel.value),
        ready: aboutTime(window.low),
      };
      context.report({
        at: next.worked.step.path,
        message: text(
          '{next} goes on {coat} after {gap}: wet on wet within {gel}, or after {ready}; between the two it wrinkles',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: coat.worked.step.path },
            message: text('{coat} is put on here', shown),
          },
        ],
        fixes: [context.edit.lineBefore('Wait until it is tacky', next.worked.step.path, 'wait until tacky')],
      });
    });
  },
});

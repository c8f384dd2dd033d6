import { isKnown, text } from '../../../calc/figure/figure.ts';
import { aboutTime } from '../kit/shown.ts';
import { gapBetween, keyed, wettedLayers, windowOf } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const coatRecoatMissed = rule({
  name: 'coat/recoat-missed',
  severity: 'warning',
  title: 'the next layer comes after the recoat window',
  on: 'recipe',
  check(context) {
    const wetted = wettedLayers(context);
    wetted.forEach((layer, i) => {
      const next = wetted[i + 1];
      if (next === undefined || next.worked === layer.worked || layer.resin.kind === 'gelcoat') return;
      const window = windowOf(context, layer.resin.recoat);
      if (window?.high === undefined) return;
      const gap = gapBetween(context, layer.worked, next.worked);
      if (!isKnown(gap) || gap.value.time <= 1.02 * window.high || keyed(gap.value.steps)) return;
      // past a cure in the plan it is a bond to cured laminate, which bond/not-keyed reports
      if (gap.value.steps.some(({ classes }) => classes.has('cure'))) return;
      const shown = {
        layer: layer.laid.name,
        next: next.laid.name,
        resin: layer.resin.name,
        gap: aboutTime(gap.value.time),
        latest: aboutTime(window.high),
      };
      context.report({
        at: next.worked.step.path,
        message: text(
          '{next} goes on {layer} after {gap}: {resin} bonds by itself until {latest}; sand it first',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: layer.worked.step.path },
            message: text('{layer} is laid here', shown),
          },
          { at: window.fact.at, message: text('the recoat window of {resin}', shown) },
        ],
        fixes: [context.edit.lineBefore('Sand it first', next.worked.step.path, 'sand 80 grit')],
      });
    });
  },
});

import { isKnown, text } from '../../../calc/figure/figure.ts';
import { familyOf, gapBetween, hasStyrene, keyed, wettedLayers } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const bondIncompatible = rule({
  name: 'bond/incompatible',
  severity: 'error',
  title: 'epoxy is laid wet on polyester that has not cured',
  on: 'recipe',
  check(context) {
    const wetted = wettedLayers(context);
    wetted.forEach((under, i) => {
      const over = wetted[i + 1];
      if (
        over === undefined ||
        under.resin.kind === 'gelcoat' ||
        !hasStyrene(familyOf(context, under.resin)) ||
        familyOf(context, over.resin) !== 'epoxy'
      )
        return;
      const gap = gapBetween(context, under.worked, over.worked);
      const cured =
        isKnown(gap) && (keyed(gap.value.steps) || gap.value.steps.some(({ classes }) => classes.has('cure')));
      if (cured) return;
      const shown = { over: over.laid.name, epoxy: over.resin.name, under: under.laid.name, resin: under.resin.name };
      context.report({
        at: over.worked.step.path,
        message: text(
          '{over} in {epoxy} goes on {under} in {resin} before that has cured and is sanded: hardener and styrene keep each other from curing',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: under.worked.step.path },
            message: text('{under} is laid here', shown),
          },
        ],
      });
    });
  },
});

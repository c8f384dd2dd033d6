import { text } from '../../../calc/figure/figure.ts';
import { pasteOf } from '../../../calc/plan/reading.ts';
import { after, stepsOf } from '../kit/steps.ts';
import { familyOf, hasStyrene, wettedLayers } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

const BONDS = ['bond', 'fillet', 'fair', 'seal edge'];

export const bondPolyesterOverEpoxy = rule({
  name: 'bond/polyester-over-epoxy',
  severity: 'error',
  title: 'polyester or vinyl ester goes over epoxy',
  on: 'recipe',
  check(context) {
    const wetted = wettedLayers(context);
    wetted.forEach((under, i) => {
      const over = wetted[i + 1];
      if (
        over === undefined ||
        familyOf(context, under.resin) !== 'epoxy' ||
        !hasStyrene(familyOf(context, over.resin))
      )
        return;
      // what peels off is a coat that nothing hangs on, and not the part
      const cosmetic = over.laid.layer.kind === 'coat' && i + 2 === wetted.length;
      const shown = { over: over.laid.name, resin: over.resin.name, under: under.laid.name, epoxy: under.resin.name };
      context.report({
        at: over.laid.path,
        ...(cosmetic ? { severity: 'warning' } : {}),
        message: text(
          '{over} in {resin} lies on {under} in {epoxy}: polyester does not bond to epoxy, it peels off',
          shown,
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: under.laid.path },
            message: text('{under} is laid in {epoxy}', shown),
          },
        ],
      });
    });
    const epoxy = wetted.at(-1);
    if (epoxy === undefined || familyOf(context, epoxy.resin) !== 'epoxy') return;
    for (const { step } of after(stepsOf(context), epoxy.worked)) {
      const name = BONDS.includes(step.verb) ? pasteOf(step) : undefined;
      const paste = name === undefined ? undefined : context.bench.material(name);
      if (paste === undefined || !hasStyrene(familyOf(context, paste))) continue;
      const shown = { paste: paste.name, under: epoxy.laid.name, epoxy: epoxy.resin.name };
      context.report({
        at: step.path,
        message: text('{paste} goes on {under} in {epoxy}: polyester does not bond to epoxy, it peels off', shown),
        related: [
          {
            at: { entry: context.recipe.entry, path: epoxy.laid.path },
            message: text('{under} is laid in {epoxy}', shown),
          },
        ],
      });
    }
  },
});

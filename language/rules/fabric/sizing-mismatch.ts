import { text } from '../../../calc/figure/index.ts';
import { both } from '../../../calc/figure/listed.ts';
import { resinOf } from '../kit/cloths.ts';
import { factValue, layersOf, materialOf, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

/** Resins that the word of a sizing may name: `sizing silane_epoxy`. One for polyester serves vinyl ester too. */
const families = ['epoxy', 'polyester', 'vinyl_ester'] as const;

export const fabricSizingMismatch = rule({
  name: 'fabric/sizing-mismatch',
  severity: 'warning',
  title: 'the sizing of a cloth is for another resin',
  on: 'recipe',
  check(context) {
    const told = new Set<string>();
    for (const laid of onePerLine(layersOf(context))) {
      if (told.has(laid.layer.material ?? '')) continue;
      const sizing = factValue(materialOf(context, laid)?.sizing);
      if (sizing === undefined) continue;
      const resin = resinOf(context, laid);
      const family = factValue(resin?.family);
      const made = families.filter((each) => sizing.includes(each));
      if (
        resin === undefined ||
        family === undefined ||
        made.length === 0 ||
        made.some((each) => family === each || (each === 'polyester' && family === 'vinyl_ester'))
      )
        continue;
      told.add(laid.layer.material ?? '');
      context.report({
        at: `${laid.path}.material`,
        message: text(
          '{material} is sized for {made} ({sizing}), {resin} is {family}: the resin wets it badly and lets go of the fibre',
          { material: laid.layer.material ?? '', made: both(made), sizing, resin: resin.name, family },
        ),
      });
    }
  },
});

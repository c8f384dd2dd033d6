import { text } from '../../../calc/figure/figure.ts';
import { laysUnknown } from '../kit/named-lays.ts';
import { after, firstOf, stepsOf } from '../kit/steps.ts';
import { wettedLayers } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const coatLastUnwaxed = rule({
  name: 'coat/last-unwaxed',
  severity: 'warning',
  title: 'the last polyester face stays tacky in the air',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'hand') return;
    const last = wettedLayers(context).at(-1);
    if (last === undefined || last.resin.airInhibited === undefined || last.laid.layer.waxed === true) return;
    const steps = stepsOf(context);
    if (
      firstOf(after(steps, last.worked), 'peel', 'film', 'perforated', 'bag', 'paint') !== undefined ||
      laysUnknown(context)
    )
      return;
    context.report({
      at: last.laid.path,
      message: text(
        '{layer} is the last open face: {resin} never cures in the air; end on a waxed flow coat, or lay peel ply or film on it',
        { layer: last.laid.name, resin: last.resin.name },
      ),
      related:
        last.resin.airInhibited === undefined
          ? []
          : [{ at: last.resin.airInhibited.at, message: text('{resin} is air inhibited', { resin: last.resin.name }) }],
      fixes: [
        last.laid.layer.kind === 'coat'
          ? context.edit.addClause('Use it with wax', last.laid.path, 'waxed')
          : undefined,
      ],
    });
  },
});

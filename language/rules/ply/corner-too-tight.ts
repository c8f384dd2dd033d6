import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import { insideRadius } from '../kit/inside-radius.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { arealWeight, asTyped, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const TYPED_RADIUS = new RegExp(`radius\\s+${TYPED_LENGTH.source}`);

export const plyCornerTooTight = rule({
  name: 'ply/corner-too-tight',
  severity: 'warning',
  title: 'an inside corner is too sharp for its cloth',
  on: 'recipe',
  check(context) {
    const { part } = context.recipe;
    if (part?.sides === undefined) return;
    const radius = part.sides.radius?.si ?? 0;
    const tight = layersOf(context).flatMap((laid) => {
      const weight =
        laid.layer.kind === 'ply' && laid.layer.extent.kind !== 'zone'
          ? valueOf(context.ask(layerArealWeight, laid.key))
          : undefined;
      const least = weight === undefined ? undefined : insideRadius(context, weight);
      return least === undefined || weight === undefined || radius >= least - 1e-9 ? [] : [{ laid, weight, least }];
    });
    const worst = tight.sort((a, b) => b.least - a.least)[0];
    if (worst === undefined) return;
    const at = `${part.path}.sides`;
    const right = `radius ${asTyped(metres(worst.least))}`;
    context.report({
      at,
      message: text(
        'the corner at the foot of the sides has {radius} of radius; {ply} ({weight}) goes into {least} or more',
        { radius: metres(radius), ply: worst.laid.name, weight: arealWeight(worst.weight), least: metres(worst.least) },
      ),
      related: [{ at: { entry: context.recipe.entry, path: worst.laid.path }, message: text('the ply that bridges') }],
      fixes: [
        part.sides.radius === undefined
          ? context.edit.addClause(text('Add {what}', { what: right }), at, right)
          : mendText(context, text('Write {what}', { what: right }), at, TYPED_RADIUS, right),
      ],
    });
  },
});

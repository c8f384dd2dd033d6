import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import { factValue, layersOf, valueOf } from '../kit/layers.ts';
import { arealWeight, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Inside radius that a cloth goes into without a bridge, m, by its weight up to, kg/m2. 6 to 12 mm from memory, fillet first; `habit inside_radius` of the shop sets its own. */
const radii: readonly (readonly [upTo: number, radius: number])[] = [
  [0.599, 0.006],
  [Infinity, 0.01],
];

export const plyCornerTooTight = rule({
  name: 'ply/corner-too-tight',
  severity: 'warning',
  title: 'an inside corner is too sharp for its cloth',
  on: 'recipe',
  check(context) {
    const { part } = context.recipe;
    if (part?.sides === undefined) return;
    const own = factValue(context.book.shop?.habits?.inside_radius)?.amounts[0]?.si;
    const radius = part.sides.radius?.si ?? 0;
    const tight = layersOf(context).flatMap((laid) => {
      const weight =
        laid.layer.kind === 'ply' && laid.layer.extent.kind !== 'zone'
          ? valueOf(context.ask(layerArealWeight, laid.key))
          : undefined;
      const least = weight === undefined ? undefined : (own ?? radii.find(([upTo]) => weight <= upTo)?.[1]);
      return least === undefined || weight === undefined || radius >= least - 1e-9 ? [] : [{ laid, weight, least }];
    });
    const worst = tight.sort((a, b) => b.least - a.least)[0];
    if (worst === undefined) return;
    context.report({
      at: `${part.path}.sides`,
      message: text(
        'the corner at the foot of the sides has {radius} of radius; {ply} ({weight}) goes into {least} or more',
        { radius: metres(radius), ply: worst.laid.name, weight: arealWeight(worst.weight), least: metres(worst.least) },
      ),
      related: [{ at: { entry: context.recipe.entry, path: worst.laid.path }, message: text('the ply that bridges') }],
    });
  },
});

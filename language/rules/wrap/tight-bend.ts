import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import { roundFor, smallestRadius } from '../kit/bend.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { arealWeight, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const wrapTightBend = rule({
  name: 'wrap/tight-bend',
  severity: 'warning',
  title: 'a ply is wrapped round an edge that is too sharp for its cloth',
  on: 'recipe',
  check(context) {
    const edge = context.recipe.part?.edge;
    if (edge === undefined || edge.kind === 'chamfer') return;
    const radius = edge.kind === 'round' ? edge.radius.si : 0;
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      const least = smallestRadius(context, laid);
      const weight = valueOf(context.ask(layerArealWeight, laid.key));
      if (least === undefined || weight === undefined || radius >= least - 1e-9) continue;
      const at = `${context.recipe.part?.path}.edge`;
      const round = roundFor(context, laid, least);
      context.report({
        at: clauseAt(laid, 'wrap'),
        message:
          radius === 0
            ? text('{ply} ({weight}) goes round a square edge; it wants a radius of {least} or more', {
                ply: laid.name,
                weight: arealWeight(weight),
                least: metres(least),
              })
            : text('{ply} ({weight}) goes round a radius of {radius}; it wants {least} or more', {
                ply: laid.name,
                weight: arealWeight(weight),
                radius: metres(radius),
                least: metres(least),
              }),
        related: [{ at: { entry: context.recipe.entry, path: at }, message: text('the edge of the part') }],
        fixes: [
          round === undefined ? undefined : context.edit.replace(text('Write {what}', { what: round }), at, round),
        ],
      });
    }
  },
});

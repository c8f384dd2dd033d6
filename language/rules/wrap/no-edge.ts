import { text } from '../../../calc/figure/index.ts';
import { roundFor, smallestRadius } from '../kit/bend.ts';
import { clauseAt, layersOf, wrappedIn } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const wrapNoEdge = rule({
  name: 'wrap/no-edge',
  severity: 'warning',
  title: 'a ply is wrapped round an edge of which nothing is said',
  on: 'recipe',
  check(context) {
    const { part } = context.recipe;
    if (part === undefined || part.edge !== undefined) return;
    const ply = wrappedIn(layersOf(context))[0];
    if (ply === undefined) return;
    const radius = smallestRadius(context, ply) ?? 0.006;
    const round = roundFor(context, ply, radius);
    context.report({
      at: clauseAt(ply, 'wrap'),
      message: text(
        '{ply} goes round the edge, but the part does not say how the edge is broken: taken as square; the cloth wants {radius} of radius',
        { ply: ply.name, radius: metres(radius) },
      ),
      related: [
        { at: { entry: context.recipe.entry, path: part.path }, message: text('the part, without a line `edge`') },
      ],
      fixes: [
        round === undefined
          ? undefined
          : context.edit.firstLineIn(text('Add: {what}', { what: round }), part.path, round),
      ],
    });
  },
});

import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { partFrame, placedPoint } from '../../../calc/outline/part.figure.ts';
import { covers } from '../../../calc/stack/footprint.figure.ts';
import { footprintOf } from '../kit/geometry.ts';
import { clauseAt, layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const plyJoinInHighLoad = rule({
  name: 'ply/join-in-high-load',
  severity: 'warning',
  title: 'a butt join lies where the load runs',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const laid of onePerLine(layers)) {
      const butt = laid.layer.joins?.find(({ kind }) => kind === 'butt');
      if (butt === undefined) continue;
      const frame = valueOf(context.ask(partFrame));
      const at = frame === undefined || butt.at === undefined ? undefined : placedPoint(frame, butt.at);
      const under = layers.find((other) => {
        const footprint =
          other.layer.kind === 'strip' || other.layer.kind === 'patch' || other.layer.kind === 'insert'
            ? footprintOf(context.bench, other)
            : undefined;
        return footprint !== undefined && at !== undefined && !isImpossible(at) && covers(footprint, at) === true;
      });
      if (under === undefined) continue;
      context.report({
        at: clauseAt(laid, 'join'),
        message: text(
          'the butt join of {ply} lies over {under}, where the load runs: a butt join carries nothing across; lap it, or move it',
          { ply: laid.name, under: under.name },
        ),
        related: [{ at: { entry: context.recipe.entry, path: under.path }, message: text('what carries there') }],
        fixes: [context.edit.replace('Write join lap 50 mm', clauseAt(laid, 'join'), 'join lap 50 mm')],
      });
    }
  },
});

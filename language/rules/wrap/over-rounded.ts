import { edgeHeight } from '../../../calc/cloth/wrap.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Radii are broken by hand or with a cutter: half a millimetre is as fine as it gets, m. */
const FINEST = 0.0005;

export const wrapOverRounded = rule({
  name: 'wrap/over-rounded',
  severity: 'warning',
  title: 'the edge is broken further than it is high',
  on: 'recipe',
  check(context) {
    const { part } = context.recipe;
    const edge = part?.edge;
    const each = edge?.kind === 'round' ? edge.radius.si : edge?.kind === 'chamfer' ? edge.depth?.si : undefined;
    if (part === undefined || each === undefined) return;
    const wrapped = onePerLine(wrappedIn(layersOf(context)));
    const lowest = wrapped
      .flatMap((laid) => {
        const height = valueOf(context.ask(edgeHeight, laid.key))?.height;
        return height === undefined ? [] : [{ laid, height }];
      })
      .sort((a, b) => a.height - b.height)[0];
    if (lowest === undefined || 2 * each <= lowest.height * (1 + 1e-9)) return;
    const { laid, height } = lowest;
    const most = Math.floor(height / 2 / FINEST + 1e-6) * FINEST;
    const at = `${part.path}.edge`;
    context.report({
      at,
      message: text(
        '{each} off both faces are {both}, and the edge is {height} high: {ply} goes round an edge that cannot be made, and its sizes cannot be told; {most} at the most',
        {
          each: metres(each),
          both: metres(2 * each),
          height: metres(height),
          ply: laid.name,
          most: metres(most),
        },
      ),
      related: [
        {
          at: { entry: context.recipe.entry, path: laid.path },
          message: text('{ply} goes round it', { ply: laid.name }),
        },
      ],
      fixes: [
        edge?.kind === 'round' && most > 0
          ? context.edit.replace(
              text('Write {what}', { what: `edge round ${asTyped(metres(most))}` }),
              at,
              `edge round ${asTyped(metres(most))}`,
            )
          : undefined,
      ],
    });
  },
});

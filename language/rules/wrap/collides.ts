import { wrapReach } from '../../../calc/cloth/wrap.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import { formBounds } from '../../../calc/outline/measure.ts';
import { partFrame } from '../../../calc/outline/part.figure.ts';
import { plainForm } from '../../../calc/outline/plain.ts';
import type { Shape } from '../../../calc/outline/shape.ts';
import { narrowest } from '../../../calc/piece/narrowest.ts';
import { SLACK } from '../kit/geometry.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { placeShown } from '../kit/points.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const wrapCollides = rule({
  name: 'wrap/collides',
  severity: 'warning',
  title: 'the landings of a wrapped ply meet where the part is narrow',
  on: 'recipe',
  check(context) {
    const wrapped = onePerLine(wrappedIn(layersOf(context)));
    const frame = wrapped.length === 0 ? undefined : valueOf(context.ask(partFrame));
    if (frame === undefined) return;
    // a box or an ellipse has no bay and is narrowest across its middle: the walk round its edge is spared where that is enough
    const least = halfWidth(frame.shape);
    const longest = Math.max(...wrapped.map(({ key }) => valueOf(context.ask(wrapReach, key))?.landing ?? 0));
    if (least !== undefined && longest <= least) return;
    const outline = contourOf(frame.shape);
    if (isImpossible(outline)) return;
    const [neck, bay] = [narrowest(outline), narrowest(outline, 'outside')];
    for (const laid of wrapped) {
      const wrap = valueOf(context.ask(wrapReach, laid.key));
      if (wrap === undefined) continue;
      const at = clauseAt(laid, 'wrap');
      if (neck !== undefined && wrap.landing > neck.half + SLACK) {
        const right = asTyped(metres(Math.floor(neck.half * 1000 + 1e-6) / 1000));
        context.report({
          at,
          message: text(
            '{ply} lands {landing} from each side of a part that is {width} wide at ({x}, {y}): the two landings lie over each other by {over}',
            {
              ply: laid.name,
              landing: metres(wrap.landing),
              width: metres(2 * neck.half),
              over: metres(2 * (wrap.landing - neck.half)),
              ...placeShown(neck.at),
            },
          ),
          fixes: [
            wrap.typed === undefined
              ? mendText(context, text('Land {what}', { what: right }), at, TYPED_LENGTH, right)
              : undefined,
          ],
        });
      }
      if (bay !== undefined && wrap.reach > bay.half + SLACK) {
        context.report({
          at,
          message: text(
            '{ply} reaches {reach} past the outline, which has a bay that is {width} wide at ({x}, {y}): the flat piece would need the same cloth twice; it is cut in two, or a patch closes the bay',
            { ply: laid.name, reach: metres(wrap.reach), width: metres(2 * bay.half), ...placeShown(bay.at) },
          ),
        });
      }
    }
  },
});

/** Half of the shorter side of a box or an ellipse, m; undefined for an outline that has to be walked round. */
function halfWidth(shape: Shape): number | undefined {
  const form = plainForm(shape);
  if (isImpossible(form) || form.kind === 'contour') return undefined;
  const { length, width } = formBounds(form);
  return Math.min(length, width) / 2;
}

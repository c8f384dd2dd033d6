import { wrapReach } from '../../../calc/cloth/wrap.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import { wrapTarget } from '../../../calc/stack/order.ts';
import { clauseAt, layersOf, typedLength, valueOf, wrappedIn } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { atOneLineOf, runOutOf } from '../kit/run-out.ts';
import { arealWeight, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const wrapStep = rule({
  name: 'wrap/step',
  severity: 'warning',
  title: 'several wrapped plies end at one line under the skin',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    const wrapped = wrappedIn(layers);
    if (wrapped.length < 2) return;
    const atOneLine = atOneLineOf(context.bench);
    const landed = wrapped.flatMap((laid) => {
      const target = wrapTarget(layers, laid);
      const wrap = target === undefined ? undefined : valueOf(context.ask(wrapReach, laid.key));
      const weight = valueOf(context.ask(layerArealWeight, laid.key));
      return target === undefined || wrap === undefined || weight === undefined
        ? []
        : [{ laid, target, landing: wrap.landing, weight, typed: wrap.typed !== undefined }];
    });
    for (const [i, one] of landed.entries()) {
      const near = landed
        .slice(0, i)
        .filter(
          (other) =>
            other.target === one.target &&
            Math.abs(other.landing - one.landing) < runOutOf(context.bench, one.weight) - 1e-9,
        );
      const sum = near.reduce((all, other) => all + other.weight, one.weight);
      if (near.length === 0 || sum <= atOneLine + 1e-9) continue;
      const right = typedLength(Math.max(...near.map(({ landing }) => landing)) + runOutOf(context.bench, one.weight));
      context.report({
        at: clauseAt(one.laid, 'wrap'),
        message: text(
          '{plies} end on {target} at nearly the same line, {sum} of cloth; let each next landing be {apart} longer or shorter',
          {
            plies: [...near, one].map(({ laid }) => laid.name).join(', '),
            target: one.target.name,
            sum: arealWeight(sum),
            apart: metres(runOutOf(context.bench, one.weight)),
          },
        ),
        fixes: [
          one.typed
            ? undefined
            : mendText(context, text('Land {what}', { what: right }), clauseAt(one.laid, 'wrap'), TYPED_LENGTH, right),
        ],
        related: near.map(({ laid }) => ({
          at: { entry: context.recipe.entry, path: clauseAt(laid, 'wrap') },
          message: text('ends there too'),
        })),
      });
    }
  },
});

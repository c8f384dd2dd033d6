import { text } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { MASS, sameDimension } from '../../../calc/quantity/index.ts';
import { resinsUsed, resinToMix } from '../../../calc/resin/needs.figure.ts';
import { valueOf } from '../kit/layers.ts';
import { about, kilograms } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const resinShort = rule({
  name: 'resin/short',
  severity: 'warning',
  title: 'less resin is in store than the order takes',
  on: 'recipe',
  check(context) {
    const { recipe, book } = context;
    if (book.shop?.stores === undefined) return;
    for (const name of valueOf(context.ask(resinsUsed)) ?? []) {
      const store = book.shop?.stores?.find(({ value }) => value !== UNKNOWN && value.material === name);
      if (store === undefined || store.value === UNKNOWN || !sameDimension(store.value.amount.dimension, MASS))
        continue;
      const one = valueOf(context.ask(resinToMix, name))?.total;
      if (one === undefined || !(one > 0)) continue;
      const need = one * recipe.quantity;
      const there = store.value.amount;
      if (there.si >= need - 1e-9) continue;
      const shown = {
        resin: name,
        there,
        need: kilograms(about(need)),
        one: kilograms(about(one)),
        parts: Math.floor(there.si / one + 1e-9),
        order: recipe.quantity,
        more: kilograms(about(need - there.si)),
      };
      context.report({
        at: recipe.process?.resin === name ? `${recipe.process.path}.resin` : '',
        message:
          there.si < one
            ? text('{there} of {resin} are in store and one part takes {one}: it would run dry in the shot', shown)
            : text(
                '{there} of {resin} are in store, enough for {parts} of {order} parts: the order takes {need}, {more} more',
                shown,
              ),
        related: [{ at: store.at, message: text('{there} in store', shown) }],
      });
    }
  },
});

import { text } from '../../../calc/figure/index.ts';
import type { Fact, Price } from '../../../calc/model/index.ts';
import { factValue } from '../kit/layers.ts';
import { usesInRecipe } from '../kit/uses.ts';
import { rule } from '../rule.ts';

/** The first price that is in another currency. */
function inAnother(own: string, prices: readonly Fact<Price>[] = []): Fact<Price> | undefined {
  for (const fact of prices) {
    const currency = factValue(fact)?.amount.currency;
    if (currency !== undefined && currency !== own) return fact;
  }
  return undefined;
}

export const costMixedCurrency = rule({
  name: 'cost/mixed-currency',
  severity: 'warning',
  title: 'a price is in another currency than the shop',
  on: 'recipe',
  check(context) {
    const own = factValue(context.bench.shop?.currency);
    if (own === undefined) return;
    const told = new Set<string>();
    for (const use of usesInRecipe(context.recipe)) {
      if (!use.wants.includes('material')) continue;
      const other = inAnother(own, context.bench.prices(use.name));
      const price = factValue(other)?.amount;
      if (other === undefined || price === undefined || told.has(use.name)) continue;
      told.add(use.name);
      context.report({
        at: use.at,
        message: text(
          '{material} costs {price}, and the shop reckons in {own}: prices are not converted, so the cost cannot be told',
          { material: use.name, price, own },
        ),
        related: [{ at: other.at, message: text('the price') }],
      });
    }
  },
});

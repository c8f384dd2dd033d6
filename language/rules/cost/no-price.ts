import { cost } from '../../../calc/cost/cost.figure.ts';
import type { Reason } from '../../../calc/figure/index.ts';
import { isCannot, text } from '../../../calc/figure/index.ts';
import { type Use, usesInRecipe } from '../kit/uses.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Materials of which the cost figure asks the price in vain. */
function withoutPrice(context: RecipeContext): ReadonlySet<string> {
  const figure = context.ask(cost);
  const names = new Set<string>();
  const look = (reasons: readonly Reason[]): void => {
    for (const { at, reasons: under } of reasons) {
      const name = at === undefined ? undefined : /^(?:stock\/)?material\/(.+)$/.exec(at.entry)?.[1];
      if (name !== undefined && at?.path === 'price') names.add(name);
      if (under !== undefined) look(under);
    }
  };
  if (isCannot(figure)) look(figure.because);
  return names;
}

export const costNoPrice = rule({
  name: 'cost/no-price',
  severity: 'info',
  title: 'a material has no price, so the cost cannot be told',
  on: 'recipe',
  check(context) {
    // a shop that names no currency does not reckon costs
    if (context.bench.shop?.currency === undefined) return;
    const { bench, recipe } = context;
    // `price ?` says that it is known to be unknown: nothing new to tell
    const open: Use[] = [];
    for (const use of usesInRecipe(recipe))
      if (bench.prices(use.name) === undefined && bench.material(use.name) !== undefined) open.push(use);
    // the cost asks for nearly all other figures: it is reckoned only where it can have something to tell
    if (open.length === 0) return;
    const names = withoutPrice(context);
    const told = new Set<string>();
    for (const use of open) {
      if (!names.has(use.name) || told.has(use.name)) continue;
      told.add(use.name);
      const material = bench.material(use.name);
      context.report({
        at: use.at,
        message: text(
          '{material} has no price, so the cost of this part cannot be told; write its price, or `price ?` until it is known',
          { material: use.name },
        ),
        ...(material === undefined
          ? {}
          : { related: [{ at: { entry: material.entry, path: 'name' }, message: text('where its price belongs') }] }),
      });
    }
  },
});

import { text } from '../../../calc/figure/figure.ts';
import { isKnown, type Usual, usual } from '../../../calc/figure/index.ts';
import { clauseWith, countOf, flat } from '../../../calc/plan/reading.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const EVERY: Usual = {
  habit: 'debulk',
  what: 'plies between two debulks',
  value: { si: 5, dimension: NUMBER },
  source: 'trade article: the first ply and every third, 20 min; every 3 to 5 elsewhere',
};

export const prepregNoDebulk = rule({
  name: 'prepreg/no-debulk',
  severity: 'warning',
  title: 'prepreg is stacked without debulking',
  on: 'recipe',
  check(context) {
    const most = usual(context.bench, EVERY);
    if (context.recipe.process?.kind !== 'prepreg' || !isKnown(most)) return;
    const steps = stepsOf(context);
    let since = 0;
    for (const worked of steps) {
      if (worked.step.verb === 'debulk') since = 0;
      const plies = worked.layers.filter((laid) => isCloth(laid) && laid.layer.kind === 'ply').length;
      if (plies === 0 || worked.inside !== undefined) continue;
      const clause = clauseWith(worked.step, 'debulk');
      const every = clause === undefined ? undefined : (countOf(flat(clause)) ?? plies);
      if (every !== undefined && every <= most.value) {
        since = plies % every;
        continue;
      }
      since += plies;
      const never = allOf(steps, 'debulk').length === 0 && every === undefined;
      if (since <= (never ? 1 : most.value)) continue;
      const shown = { plies: since, most: most.value, right: Math.min(3, most.value) };
      const often = `debulk 20 min every ${shown.right} plies`;
      context.report({
        at: worked.step.path,
        message: never
          ? text(
              '{plies} plies and no debulk at all: the air between them stays as voids; press down the first ply, then every {right} plies, 20 min each',
              shown,
            )
          : text(
              '{plies} plies with no debulk between, {most} at the most: the air between them stays as voids; press down every {right} plies, 20 min each',
              shown,
            ),
        fixes: [
          clause === undefined
            ? context.edit.addClause(text('Add {what}', { what: often }), worked.step.path, often)
            : context.edit.replace(text('Write {what}', { what: often }), clause.path, often),
        ],
      });
      since = 0;
      if (never) return;
    }
  },
});

import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { amountOf, clauseWith, countOf, flat, head, mixedName } from '../../../calc/plan/reading.ts';
import { MASS } from '../../../calc/quantity/index.ts';
import { potLifeFor, potLimit } from '../../../calc/resin/pot.figure.ts';
import { kilograms } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const LARGEST_POT: Usual = {
  habit: 'largest_pot',
  what: 'most resin in one pot',
  value: kilograms(5),
  source: 'common practice: 3 to 5 kg, less for fast hardeners',
};

export const resinExothermInPot = rule({
  name: 'resin/exotherm-in-pot',
  severity: 'warning',
  title: 'so much resin in one pot that it may run away',
  on: 'recipe',
  check(context) {
    const most = usual(context.bench, LARGEST_POT);
    for (const { step } of allOf(stepsOf(context), 'mix')) {
      const mass = amountOf(head(step), MASS);
      const resin = mixedName(step) ?? context.recipe.process?.resin;
      if (mass === undefined || resin === undefined || !isKnown(most)) continue;
      const clause = clauseWith(step, 'batches');
      const pots = clause === undefined ? 1 : Math.max(1, countOf(flat(clause)) ?? 1);
      const each = mass.si / pots;
      if (each <= most.value + 1e-9 || goesOffFirst(context, resin, each)) continue;
      const wanted = Math.ceil(mass.si / most.value - 1e-9);
      const shown = { each: kilograms(each), resin, most: kilograms(most.value), wanted };
      context.report({
        at: step.path,
        message: text(
          '{each} of {resin} in one pot: over {most} it heats itself faster than it can cool; mix {wanted} pots, one after the other',
          shown,
        ),
        fixes: [
          clause === undefined
            ? context.edit.addClause(text('Mix in {what} pots', { what: wanted }), step.path, `batches ${wanted}`)
            : context.edit.replace(text('Mix in {what} pots', { what: wanted }), clause.path, `batches ${wanted}`),
        ],
      });
    }
  },
});

/** Then resin/batch-too-big reports the same pot, and says more. */
function goesOffFirst(context: Parameters<typeof stepsOf>[0], resin: string, mass: number): boolean {
  const life = potLifeFor(context.bench, resin, mass);
  const plan = context.ask(potLimit, resin);
  return isKnown(life) && isKnown(plan) && life.value < plan.value.needs;
}

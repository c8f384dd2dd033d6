import { isKnown, text } from '../../../calc/figure/figure.ts';
import { amountOf, clauseWith, countOf, flat, head, mixedName } from '../../../calc/plan/reading.ts';
import { MASS } from '../../../calc/quantity/index.ts';
import { potLimit } from '../../../calc/resin/pot.figure.ts';
import { largestPot, nearestReading, potLifeOf, shortestUse } from '../../../calc/resin/pot-mass.ts';
import { potLives } from '../../../calc/resin/time.figure.ts';
import { about, aboutTime, kilograms } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const resinBatchTooBig = rule({
  name: 'resin/batch-too-big',
  severity: 'error',
  title: 'a pot goes off before it is used up',
  on: 'recipe',
  check(context) {
    for (const { step } of allOf(stepsOf(context), 'mix')) {
      const mass = amountOf(head(step), MASS);
      const resin = mixedName(step) ?? context.recipe.process?.resin;
      if (mass === undefined || resin === undefined || !(mass.si > 0)) continue;
      const clause = clauseWith(step, 'batches');
      const typed = clause === undefined ? 1 : Math.max(1, countOf(flat(clause)) ?? 1);
      const lives = potLives(context.bench, resin);
      const plan = context.ask(potLimit, resin);
      if (!isKnown(lives) || !isKnown(plan)) continue;
      const each = mass.si / typed;
      const reading = nearestReading(lives.value, each);
      const life = potLifeOf(reading, each);
      const { needs } = plan.value;
      const most = largestPot(reading, Math.max(needs, shortestUse));
      if (typeof life !== 'number' || typeof most !== 'number' || !(life < needs)) continue;
      const pots = Math.ceil(mass.si / most - 1e-9);
      const shown = {
        each: kilograms(each),
        resin,
        life: aboutTime(life),
        needs: aboutTime(needs),
        pots,
        most: kilograms(about(most)),
      };
      context.report({
        at: step.path,
        message: text(
          '{each} of {resin} in one pot goes off in {life}, using it takes {needs}: no pot of more than {most}, so {pots} of them',
          shown,
        ),
        fixes: [
          clause === undefined
            ? context.edit.addClause(text('Mix in {what} pots', { what: pots }), step.path, `batches ${pots}`)
            : context.edit.replace(text('Mix in {what} pots', { what: pots }), clause.path, `batches ${pots}`),
        ],
      });
    }
  },
});

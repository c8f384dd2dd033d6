import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { amountOf, clauseWith, flat, head } from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { NEAR } from '../kit/cure-near.ts';
import { materialsThatCure } from '../kit/cures.ts';
import { habitOf } from '../kit/habit.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const curePartNotTool = rule({
  name: 'cure/part-not-tool',
  severity: 'info',
  title: 'a hold counts from the air of the oven',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'prepreg') return;
    const steps = stepsOf(context).filter(({ inside }) => inside?.verb === 'cure');
    const cure = materialsThatCure(context).flatMap((material) => material.cure ?? [])[0]?.value;
    const wanted = cure === undefined || cure === UNKNOWN ? undefined : cure.temperature?.si;
    const near = habitOf(context.bench, NEAR);
    let temperature: number | undefined;
    for (const { step } of steps) {
      temperature = amountOf(head(step), TEMPERATURE)?.si ?? temperature;
      if (step.verb !== 'hold' || temperature === undefined || wanted === undefined || temperature < wanted - near)
        continue;
      if (
        clauseWith(step, 'part') !== undefined ||
        step.clauses.some((clause) => amountOf(flat(clause), TEMPERATURE) !== undefined)
      )
        continue;
      const above = `part above ${Math.round(temperature - 273.15 - 3)} degC`;
      context.report({
        at: step.path,
        message: text(
          'the hold counts from the air: tool and part follow a quarter of an hour and more behind; count it from the slowest probe',
          {},
        ),
        fixes: [context.edit.addClause('Count from the part', step.path, above)],
      });
    }
  },
});

import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { resinsOf } from '../kit/doses.ts';
import { mendText } from '../kit/mend-text.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const resinWrongCatalyst = rule({
  name: 'resin/wrong-catalyst',
  severity: 'warning',
  title: 'another catalyst than the resin asks for',
  on: 'recipe',
  check(context) {
    for (const worked of allOf(stepsOf(context), 'catalyse')) {
      const name = subject(worked.step);
      if (name === undefined || context.bench.material(name)?.kind !== 'catalyst') continue;
      for (const resin of resinsOf(context, worked)) {
        const fact = resin.catalyst;
        if (fact === undefined || fact.value === UNKNOWN || fact.value.material === name) continue;
        const shown = { typed: name, resin: resin.name, right: fact.value.material };
        context.report({
          at: worked.step.path,
          message: text(
            '{typed} in {resin}, which asks for {right}: ordinary ketone peroxide foams in many vinyl esters',
            shown,
          ),
          related: [{ at: fact.at, message: text('{resin} asks for {right}', shown) }],
          fixes: [
            mendText(
              context,
              text('Take {what}', { what: fact.value.material }),
              worked.step.path,
              name,
              fact.value.material,
            ),
          ],
        });
      }
    }
  },
});

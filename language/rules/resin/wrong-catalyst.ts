import { text } from '../../../calc/figure/figure.ts';
import { type Step, type StepClause, UNKNOWN } from '../../../calc/model/index.ts';
import { firstClause, flat, subject } from '../../../calc/plan/reading.ts';
import { resinsOf } from '../kit/doses.ts';
import { mendText } from '../kit/mend-text.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

export const resinWrongCatalyst = rule({
  name: 'resin/wrong-catalyst',
  severity: 'warning',
  title: 'another catalyst than the resin asks for',
  on: 'recipe',
  check(context) {
    for (const worked of stepsOf(context)) {
      const typedAt = namedCatalyst(context, worked.step);
      if (typedAt === undefined) continue;
      const { name, path } = typedAt;
      for (const resin of resinsOf(context, worked)) {
        const fact = resin.catalyst;
        if (fact === undefined || fact.value === UNKNOWN || fact.value.material === name) continue;
        const shown = { typed: name, resin: resin.name, right: fact.value.material };
        context.report({
          at: path,
          message:
            resin.family?.value === 'vinyl_ester'
              ? text(
                  '{typed} in {resin}, which asks for {right}: ordinary ketone peroxide foams in many vinyl esters',
                  shown,
                )
              : text('{typed} in {resin}, which asks for {right}: its gel and cure are told for {right} alone', shown),
          related: [{ at: fact.at, message: text('{resin} asks for {right}', shown) }],
          fixes: [
            mendText(context, text('Take {what}', { what: fact.value.material }), path, name, fact.value.material),
          ],
        });
      }
    }
  },
});

/** `catalyse mekp_50 1.5 % by weight`, or `lay mat, catalyst mekp_50 1.5 % by weight`. */
function namedCatalyst(
  context: RecipeContext,
  step: Step,
): { readonly name: string; readonly path: string } | undefined {
  const clause = firstClause(step, 'catalyst');
  const said = step.verb === 'catalyse' ? [subject(step)] : clause === undefined ? [] : namesIn(clause);
  const name = said.find((each) => each !== undefined && context.bench.material(each)?.kind === 'catalyst');
  return name === undefined
    ? undefined
    : { name, path: step.verb === 'catalyse' ? step.path : (clause?.path ?? step.path) };
}

const namesIn = (clause: StepClause): string[] =>
  flat(clause).flatMap((argument) => (argument.kind === 'word' ? [argument.word] : []));

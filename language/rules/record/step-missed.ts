import { text } from '../../../calc/figure/figure.ts';
import { own } from '../../../calc/own.ts';
import { planOf, readingsOf } from '../kit/record-plan.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Steps that a record answers with a line, by the word of that line. */
const ANSWERS: Readonly<Record<string, string>> = { weigh: 'mass', 'leak test': 'leak' };

export const recordStepMissed = rule({
  name: 'record/step-missed',
  severity: 'info',
  title: 'a check of the recipe has no answer in the record',
  on: 'record',
  check(context) {
    const { record } = context;
    const plan = planOf(context);
    // a record of another revision answers other questions; one that says nothing but its lots is only begun
    if (
      plan === undefined ||
      record.readings.length < 2 ||
      (record.revision !== undefined && record.revision !== plan.recipe.revision)
    )
      return;
    const told = new Set<string>();
    for (const { step, what, on } of questions(plan)) {
      const answered = readingsOf(record, what).some(({ words }) => on === undefined || words.includes(on));
      if (answered || told.has(`${what} ${on}`)) continue;
      told.add(`${what} ${on}`);
      context.report({
        at: '',
        message:
          on === undefined
            ? text('nothing recorded for {step}: a line `{what}` answers it', { step, what })
            : text('nothing recorded for {step} on {layer}: a line `{what}` answers it', { step, what, layer: on }),
        related: [
          { at: { entry: plan.recipe.entry, path: questionPath(plan, step, on) }, message: text('asked for here') },
        ],
      });
    }
  },
});

function questions(
  plan: RecipeContext,
): readonly { readonly step: string; readonly what: string; readonly on?: string }[] {
  return stepsOf(plan).flatMap(({ step }) => {
    const answer = own(ANSWERS, step.verb);
    if (answer !== undefined) return [{ step: step.verb, what: answer }];
    const { test } = step;
    return step.verb === 'check' && test?.what === 'barcol'
      ? [{ step: 'check barcol', what: 'barcol', ...(test.on === undefined ? {} : { on: test.on }) }]
      : [];
  });
}

const questionPath = (plan: RecipeContext, asked: string, on: string | undefined): string =>
  stepsOf(plan).find(
    ({ step }) =>
      step.verb === asked || (asked.startsWith('check') && step.test?.what === 'barcol' && step.test.on === on),
  )?.step.path ?? '';

import { text } from '../../../calc/figure/figure.ts';
import { head, subject } from '../../../calc/plan/reading.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const DANGER = 'the two react explosively when they meet undiluted';

export const resinPromoterAndPeroxide = rule({
  name: 'resin/promoter-and-peroxide',
  severity: 'error',
  always: true,
  title: 'peroxide and accelerator may meet outside the resin',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const isPeroxide = (name: string | undefined): boolean =>
      name !== undefined && context.bench.material(name)?.kind === 'catalyst';
    const accelerators = new Set(
      allOf(steps, 'accelerate')
        .flatMap(({ step }) => subject(step) ?? [])
        .filter((name) => !isPeroxide(name)),
    );
    const peroxide = allOf(steps, 'catalyse')[0];
    for (const accelerate of allOf(steps, 'accelerate')) {
      if (peroxide === undefined || steps.indexOf(accelerate) < steps.indexOf(peroxide)) continue;
      context.report({
        at: accelerate.step.path,
        message: text(
          'the accelerator goes into a pot with peroxide in it: {danger}; accelerator first, stirred fully in, peroxide last',
          { danger: DANGER },
        ),
        related: [
          {
            at: { entry: context.recipe.entry, path: peroxide.step.path },
            message: text('the peroxide is stirred in here'),
          },
        ],
        fixes: [context.edit.moveBefore('Accelerator first', accelerate.step.path, peroxide.step.path)],
      });
    }
    for (const { step } of accelerators.size === 0 ? [] : steps) {
      const names = [
        step.material,
        ...[
          ...head(step),
          ...step.clauses.flatMap((clause) => [
            ...clause.arguments,
            ...clause.phrases.flatMap((phrase) => phrase.arguments),
          ]),
        ].flatMap((said) => (said.kind === 'word' ? [said.word] : [])),
      ];
      const catalyst = names.find(isPeroxide);
      const accelerator = names.find((name) => name !== undefined && accelerators.has(name));
      if (catalyst === undefined || accelerator === undefined) continue;
      context.report({
        at: step.path,
        message: text('{catalyst} and {accelerator} in one step: {danger}; two steps, with the resin between them', {
          catalyst,
          accelerator,
          danger: DANGER,
        }),
      });
    }
  },
});

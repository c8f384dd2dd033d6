import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { subject, typedTime } from '../../../calc/plan/reading.ts';
import { asTyped } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const releaseNotDry = rule({
  name: 'release/not-dry',
  severity: 'error',
  title: 'a coat of release is not dry before the next',
  on: 'recipe',
  check(context) {
    for (const { step } of allOf(stepsOf(context), 'release')) {
      const name = subject(step);
      const fact = name === undefined ? undefined : context.bench.material(name)?.dry;
      const needs = fact === undefined || fact.value === UNKNOWN ? undefined : fact.value.time;
      if (name === undefined || fact === undefined || needs === undefined) continue;
      const time = typedTime(step);
      if (time?.each !== true || time.amount.si >= needs.si) continue;
      context.report({
        at: time.path,
        message: text('{time} for each coat: {material} dries in {needs}', {
          time: time.amount,
          material: name,
          needs,
        }),
        related: [{ at: fact.at, message: text('{material} dries in {needs}', { material: name, needs }) }],
        fixes: [
          context.edit.replace(
            text('Give each coat {what}', { what: asTyped(needs) }),
            time.path,
            `${asTyped(needs)} each`,
          ),
        ],
      });
    }
  },
});

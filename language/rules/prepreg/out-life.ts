import { isKnown, text } from '../../../calc/figure/figure.ts';
import { allKnown } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { stepStandingTime, stepWorkingTime } from '../../../calc/plan/step.figure.ts';
import { firstPrepregs } from '../kit/prepregs.ts';
import { aboutTime } from '../kit/shown.ts';
import { allOf, between, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const prepregOutLife = rule({
  name: 'prepreg/out-life',
  severity: 'error',
  title: 'the plan keeps prepreg out longer than it lives',
  on: 'recipe',
  check(context) {
    const prepregs = firstPrepregs(context);
    if (prepregs.length === 0) return;
    const steps = stepsOf(context);
    const thaw = allOf(steps, 'thaw')[0] ?? firstOf(steps, 'lay');
    const cure = firstOf(steps, 'cure');
    if (thaw === undefined || cure === undefined || steps.indexOf(cure) < steps.indexOf(thaw)) return;
    const out = [thaw, ...between(steps, thaw, cure)].filter(({ inside }) => inside === undefined);
    const times = allKnown(
      out.flatMap(({ step }) => [context.ask(stepStandingTime, step.path), context.ask(stepWorkingTime, step.path)]),
    );
    if (!isKnown(times)) return;
    const sum = times.value.reduce((all, time) => all + time, 0);
    for (const { material } of prepregs) {
      const life = material.outLife;
      if (life === undefined || life.value === UNKNOWN || sum <= life.value.value.si) continue;
      const shown = { material: material.name, out: aboutTime(sum), life: life.value.value };
      context.report({
        at: cure.step.path,
        message: text(
          'from thawing to the cure {material} is out for {out}: it lives {life} out of the freezer',
          shown,
        ),
        related: [
          { at: life.at, message: text('the out-life of {material}', shown) },
          { at: { entry: context.recipe.entry, path: thaw.step.path }, message: text('out from here on') },
        ],
      });
    }
  },
});

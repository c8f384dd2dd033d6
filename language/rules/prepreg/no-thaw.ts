import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { addStep } from '../kit/missing-step.ts';
import { firstPrepregs } from '../kit/prepregs.ts';
import { asTyped, seconds } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const SIX_HOURS = 6 * 3600;

export const prepregNoThaw = rule({
  name: 'prepreg/no-thaw',
  severity: 'warning',
  title: 'prepreg is laid from the freezer',
  on: 'recipe',
  check(context) {
    const thawed = allOf(stepsOf(context), 'thaw').map(({ step }) => subject(step));
    for (const { material, worked } of firstPrepregs(context)) {
      if (material.freezer === undefined || thawed.includes(undefined) || thawed.includes(material.name)) continue;
      const own = material.thaw?.value;
      const time = own === undefined || own === UNKNOWN ? SIX_HOURS : own.si;
      const shown = { material: material.name, time: seconds(time) };
      context.report({
        at: worked.step.path,
        message: text(
          '{material} comes from the freezer: thaw it {time} in its shut bag, or dew settles on it and boils in the cure',
          shown,
        ),
        related: [{ at: material.freezer.at, message: text('{material} is kept in the freezer', shown) }],
        fixes: [addStep(context, 'thaw', `thaw ${material.name}, ${asTyped(seconds(time))}, bag shut`)],
      });
    }
  },
});

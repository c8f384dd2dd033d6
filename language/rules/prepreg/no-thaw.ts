import { text, type Usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { subject, typedTime } from '../../../calc/plan/reading.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_TIME } from '../kit/mend-text.ts';
import { addStep } from '../kit/missing-step.ts';
import { firstPrepregs } from '../kit/prepregs.ts';
import { asTyped, seconds } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const THAW: Usual = {
  habit: 'thaw',
  what: 'how long a prepreg thaws',
  value: seconds(6 * 3600),
  source: 'common practice',
};

export const prepregNoThaw = rule({
  name: 'prepreg/no-thaw',
  severity: 'warning',
  title: 'prepreg is laid from the freezer, or thawed too short',
  on: 'recipe',
  check(context) {
    const thaws = allOf(stepsOf(context), 'thaw');
    for (const { material, worked } of firstPrepregs(context)) {
      const cold = material.freezer;
      if (cold === undefined) continue;
      const said = material.thaw?.value;
      const time = said === undefined || said === UNKNOWN ? habitOf(context.bench, THAW) : said.si;
      const shown = { material: material.name, time: seconds(time) };
      const related = [
        { at: cold.at, message: text('{material} is kept in the freezer', shown) },
        ...(material.thaw === undefined || said === UNKNOWN
          ? []
          : [{ at: material.thaw.at, message: text('{material} thaws in {time}', shown) }]),
      ];
      const thaw = thaws.find(({ step }) => (subject(step) ?? material.name) === material.name);
      if (thaw === undefined) {
        context.report({
          at: worked.step.path,
          message: text(
            '{material} comes from the freezer: thaw it {time} in its shut bag, or dew settles on it and boils in the cure',
            shown,
          ),
          related,
          fixes: [addStep(context, 'thaw', `thaw ${material.name}, ${asTyped(seconds(time))}, bag shut`)],
        });
        continue;
      }
      // a thaw that says no time takes that of the material
      const typed = typedTime(thaw.step);
      if (typed === undefined || typed.amount.si >= time - 1e-6) continue;
      context.report({
        at: typed.path,
        message: text(
          '{material} wants {time} in its shut bag and gets {typed}: opened cold, dew settles on it and boils in the cure',
          { ...shown, typed: typed.amount },
        ),
        related,
        fixes: [
          mendText(
            context,
            text('Thaw {what}', { what: asTyped(seconds(time)) }),
            typed.path,
            TYPED_TIME,
            asTyped(seconds(time)),
          ),
        ],
      });
    }
  },
});

import { isKnown, text, type Usual } from '../../../calc/figure/index.ts';
import { amountOf, clauseWith, flat, pasteOf } from '../../../calc/plan/reading.ts';
import { stepWorkingTime } from '../../../calc/plan/step.figure.ts';
import { TIME } from '../../../calc/quantity/index.ts';
import { gelTime } from '../../../calc/resin/time.figure.ts';
import { habitOf } from '../kit/habit.ts';
import { aboutTime, share } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { peopleOf } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

/** Of the gel time: the rest is for closing and clamping. Common practice. */
const USABLE: Usual = {
  habit: 'closing',
  what: 'share of the gel time in which a joint is closed',
  value: share(0.8),
  source: 'common practice',
};

export const bondOpenTime = rule({
  name: 'bond/open-time',
  severity: 'error',
  title: 'the paste gels before the joint is closed',
  on: 'recipe',
  check(context) {
    for (const { step } of stepsOf(context)) {
      if (step.verb !== 'bond' && step.verb !== 'bed') continue;
      const name = pasteOf(step);
      const paste = name === undefined ? undefined : context.bench.material(name);
      if (name === undefined || paste === undefined || !['paste', 'resin'].includes(paste.kind)) continue;
      const gel = context.ask(gelTime, name);
      const work = context.ask(stepWorkingTime, step.path);
      if (!isKnown(gel) || !isKnown(work)) continue;
      const people = peopleOf(context);
      const takes = work.value / people;
      const usable = habitOf(context.bench, USABLE) * gel.value;
      const clause = clauseWith(step, 'within');
      const promised = clause === undefined ? undefined : amountOf(flat(clause), TIME);
      if (takes <= usable && (promised === undefined || promised.si <= usable)) continue;
      const shown = {
        takes: aboutTime(takes),
        people,
        paste: name,
        usable: aboutTime(usable),
        gel: aboutTime(gel.value),
      };
      context.report({
        at: takes <= usable && clause !== undefined ? clause.path : step.path,
        message:
          takes <= usable && promised !== undefined
            ? text('closed within {promised}: {paste} gels in {gel}, so {usable} of work', { ...shown, promised })
            : text(
                'buttering and closing takes {takes} with {people} people: {paste} gels in {gel}, so {usable} of work',
                shown,
              ),
        related:
          paste.gel?.[0] === undefined
            ? []
            : [{ at: paste.gel[0].at, message: text('the gel time of {paste}', shown) }],
      });
    }
  },
});

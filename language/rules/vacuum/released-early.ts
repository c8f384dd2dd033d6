import { equivalentTime } from '../../../calc/cure/equivalent.ts';
import { isKnown, text, type Usual } from '../../../calc/figure/index.ts';
import { typedTime } from '../../../calc/plan/reading.ts';
import { gelTime, workTemperature } from '../../../calc/resin/time.figure.ts';
import { spansOf } from '../kit/cures.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_TIME } from '../kit/mend-text.ts';
import { aboutTime, asTyped, seconds, share } from '../kit/shown.ts';
import { allOf, between, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** The bag presses to the gel and half as long again. Common practice. */
const BEYOND_GEL: Usual = {
  habit: 'pressed',
  what: 'how long the bag presses, of the gel time',
  value: share(1.5),
  source: 'common practice',
};

export const vacuumReleasedEarly = rule({
  name: 'vacuum/released-early',
  severity: 'error',
  title: 'the vacuum is let off before the resin holds by itself',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const gel = context.ask(gelTime, '');
    const temperature = context.ask(workTemperature);
    if ((process?.kind !== 'infusion' && process?.kind !== 'bagged') || !isKnown(gel) || !isKnown(temperature)) return;
    const needs = habitOf(context.bench, BEYOND_GEL) * gel.value;
    const told = () => ({ resin: process.resin ?? 'the resin', gel: aboutTime(gel.value), needs: aboutTime(needs) });
    const steps = stepsOf(context);
    for (const { step } of allOf(steps, 'vacuum')) {
      const time = typedTime(step);
      if (time === undefined || time.amount.si >= needs) continue;
      const right = asTyped(seconds(Math.ceil(needs / 900 - 1e-9) * 900));
      context.report({
        at: time.path,
        message: text(
          'the vacuum is let off after {time}: {resin} gels in {gel}, hold it {needs} or the skins spring off',
          { ...told(), time: time.amount },
        ),
        fixes: [mendText(context, text('Hold it {what}', { what: right }), time.path, TYPED_TIME, right)],
      });
    }
    const off = firstOf(steps, 'unwrap');
    const wet =
      off === undefined
        ? undefined
        : steps
            .slice(0, steps.indexOf(off))
            .findLast(({ classes }) => classes.has(process.kind === 'infusion' ? 'infuse' : 'lay'));
    if (off === undefined || wet === undefined) return;
    const spans = spansOf(
      context,
      between(steps, wet, off).filter(({ inside }) => inside === undefined),
    );
    const stood = isKnown(spans) ? equivalentTime(spans.value, temperature.value) : undefined;
    if (typeof stood !== 'number' || stood >= needs) return;
    context.report({
      at: off.step.path,
      message: text('the bag comes off after {time}: {resin} gels in {gel}, leave it {needs} or the skins spring off', {
        ...told(),
        time: aboutTime(stood),
      }),
      related: [
        { at: { entry: context.recipe.entry, path: wet.step.path }, message: text('the resin is wet from here on') },
      ],
    });
  },
});

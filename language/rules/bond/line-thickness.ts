import { text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { bondLine } from '../../../calc/plan/reading.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** Between starved and brittle. */
const THINNEST: Usual = {
  habit: 'bond_thinnest',
  what: 'thinnest line of a bond',
  value: metres(0.0005),
  source: 'common practice',
};
const THICKEST: Usual = {
  habit: 'bond_thickest',
  what: 'thickest line of a bond',
  value: metres(0.003),
  source: 'common practice',
};
/** What is written where the shop bears it, m. */
const USUAL = 0.0015;
/** Steps in which a dry fit can be said: in the words of the shop. */
const LOOKS = ['check', 'do'];

export const bondLineThickness = rule({
  name: 'bond/line-thickness',
  severity: 'warning',
  title: 'a bond whose line is too thin, too thick, or was never tried dry',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    if (firstOf(steps, 'bond') === undefined) return;
    const thin = habitOf(context.bench, THINNEST);
    const thick = habitOf(context.bench, THICKEST);
    const right = asTyped(metres(Math.min(thick, Math.max(thin, USUAL))));
    const gap = `${asTyped(metres(thin))} to ${asTyped(metres(thick))}`;
    steps.forEach(({ step }, i) => {
      if (step.verb !== 'bond') return;
      const said = bondLine(step);
      const line = said?.amount;
      const shown = { thin: metres(thin), thick: metres(thick), ...(line === undefined ? {} : { line }) };
      if (said !== undefined && line !== undefined) {
        if (line.si >= thin - 1e-9 && line.si <= thick + 1e-9) return;
        context.report({
          at: said.path,
          message:
            line.si < thin
              ? text('a bond line of {line} is starved: {thin} to {thick} holds', shown)
              : text('a bond line of {line} is brittle and slumps: {thin} to {thick} holds', shown),
          fixes: [mendText(context, text('Make it {what}', { what: right }), said.path, TYPED_LENGTH, right)],
        });
        return;
      }
      const from = steps.slice(0, i).findLastIndex((each) => ['bond', 'lay', 'demould'].includes(each.step.verb));
      if (steps.slice(from + 1, i).some((each) => LOOKS.includes(each.step.verb))) return;
      context.report({
        at: step.path,
        message: text(
          'nobody tries the fit dry: the line must come out {thin} to {thick} thick all along, and once it is buttered it is too late',
          shown,
        ),
        fixes: [context.edit.lineBefore('Try it dry first', step.path, `check "Dry fit: ${gap} of gap all along."`)],
      });
    });
  },
});

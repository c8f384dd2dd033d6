import { text } from '../../../calc/figure/figure.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_RAMP } from '../kit/mend-text.ts';
import { fastHeatings } from '../kit/postcures.ts';
import { kelvin } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';
import { SLOW, slowRamp } from './postcure-ramp.ts';

export const cureFreePostcureDistorts = rule({
  name: 'cure/free-postcure-distorts',
  severity: 'warning',
  title: 'a free part is heated over what its resin bears',
  on: 'recipe',
  check(context) {
    if (firstOf(stepsOf(context), 'postcure free') === undefined) return;
    const slow = habitOf(context.bench, SLOW);
    for (const { heat, to, reached, resin, step, rate } of fastHeatings(context, slow)) {
      if (!heat.classes.has('postcure free')) continue;
      const shown = { to: kelvin(to), resin: resin.name, reached: kelvin(reached) };
      context.report({
        at: heat.step.path,
        message: text(
          'free at {to}, while {resin} has come to a glass transition of {reached}: it sags under its own weight; support it flat, hang it, or heat slowly',
          shown,
        ),
        related:
          heat.step === step
            ? []
            : [{ at: { entry: context.recipe.entry, path: step.path }, message: text('heated to {to} here', shown) }],
        fixes: [
          rate === undefined
            ? mendText(context, 'Support it flat', heat.step.path, /\bfree\b/, 'flat')
            : mendText(
                context,
                text('Ramp at {what}', { what: slowRamp(slow) }),
                step.path,
                TYPED_RAMP,
                slowRamp(slow),
              ),
        ],
      });
    }
  },
});

import { text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_RAMP } from '../kit/mend-text.ts';
import { fastHeatings } from '../kit/postcures.ts';
import { asTyped, kelvin, ramp } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const SLOW: Usual = {
  habit: 'postcure',
  what: 'ramp that the resin follows',
  value: ramp(15 / 3600),
  source: '10 to 15 K/h, from memory',
};

/** The ramp that a fix writes, K/s: the slower end of what is usual, or slower where the shop wants it so. */
export const slowRamp = (slow: number): string => asTyped(ramp(Math.min(10 / 3600, slow)));

export const curePostcureRamp = rule({
  name: 'cure/postcure-ramp',
  severity: 'warning',
  title: 'a postcure heats faster than the resin can follow',
  on: 'recipe',
  check(context) {
    const slow = habitOf(context.bench, SLOW);
    for (const { heat, step, rate, to, reached, resin } of fastHeatings(context, slow)) {
      // a free part is told so by cure/free-postcure-distorts
      if (heat.classes.has('postcure free') || rate === undefined) continue;
      const shown = { rate, to: kelvin(to), slow: ramp(slow), resin: resin.name, reached: kelvin(reached) };
      context.report({
        at: step.path,
        message: text(
          '{rate} to {to}, while {resin} has come to a glass transition of {reached}: over {slow} it goes soft and distorts, and the core gives off gas',
          shown,
        ),
        fixes: [
          mendText(context, text('Ramp at {what}', { what: slowRamp(slow) }), step.path, TYPED_RAMP, slowRamp(slow)),
        ],
      });
    }
  },
});

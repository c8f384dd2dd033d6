import { isKnown, text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { stackHeight } from '../../../calc/laminate/height.figure.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_RAMP } from '../kit/mend-text.ts';
import { fastHeatings } from '../kit/postcures.ts';
import { rampsOf } from '../kit/ramps.ts';
import { about, asTyped, metres, ramp } from '../kit/shown.ts';
import { rule } from '../rule.ts';
import { SLOW } from './postcure-ramp.ts';

const FASTEST: Usual = { habit: 'ramp', what: 'fastest ramp', value: ramp(3 / 60), source: 'common practice: 3 K/min' };
const THICK: Usual = {
  habit: 'thick_prepreg',
  what: 'thickness from which a prepreg heats itself',
  value: metres(0.006),
  source: 'common practice',
};

export const cureRamp = rule({
  name: 'cure/ramp',
  severity: 'warning',
  title: 'the oven heats too fast for the part',
  on: 'recipe',
  check(context) {
    const ramps = rampsOf(context);
    const only = ramps[0];
    if (only === undefined) return;
    const most = habitOf(context.bench, FASTEST);
    for (const { step, rate } of ramps) {
      if (rate === undefined || rate.si <= most * 1.001) continue;
      // a ramp that outruns the resin is told so by the rules of postcures
      if (fastHeatings(context, habitOf(context.bench, SLOW)).some((heating) => heating.step === step)) continue;
      const right = asTyped(ramp(most));
      context.report({
        at: step.path,
        message: text(
          '{rate} is too fast: over {most} the outside sets while the inside is cold, and the part overshoots',
          { rate, most: ramp(most) },
        ),
        fixes: [mendText(context, text('Ramp at {what}', { what: right }), step.path, TYPED_RAMP, right)],
      });
    }
    if (context.recipe.process?.kind !== 'prepreg' || ramps.length !== 1) return;
    const [height, stack] = [context.ask(stackHeight), context.ask(laidStack)];
    if (!isKnown(height) || !isKnown(stack)) return;
    const thick = habitOf(context.bench, THICK);
    if (height.value <= thick + 1e-9 || stack.value.layers.some(({ layer }) => layer.kind === 'core')) return;
    context.report({
      at: only.step.path,
      message: text(
        '{height} of prepreg in one ramp: over {thick} it heats itself; dwell on the way, half an hour at 80 degC',
        { height: metres(about(height.value)), thick: metres(thick) },
      ),
    });
  },
});

import { hottest } from '../../../calc/cure/equivalent.ts';
import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { NEAR } from '../kit/cure-near.ts';
import { materialsThatCure, spansOf } from '../kit/cures.ts';
import { habitOf } from '../kit/habit.ts';
import { kelvin } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const cureNoPostcure = rule({
  name: 'cure/no-postcure',
  severity: 'info',
  title: 'a loaded part whose resin is not postcured',
  on: 'recipe',
  check(context) {
    // what bears no load that anybody asks about lives well without
    if (context.recipe.loads.length === 0) return;
    const cures = allOf(stepsOf(context), 'cure', 'postcure');
    const last = cures.at(-1);
    const spans = spansOf(context, cures);
    const peak = isKnown(spans) ? hottest(spans.value) : undefined;
    if (last === undefined || peak === undefined) return;
    for (const resin of materialsThatCure(context)) {
      const fact = resin.postcure?.find(({ value }) => value !== UNKNOWN && value.temperature !== undefined);
      if (
        fact === undefined ||
        fact.value === UNKNOWN ||
        fact.value.temperature === undefined ||
        peak >= fact.value.temperature.si - habitOf(context.bench, NEAR)
      )
        continue;
      const shown = {
        resin: resin.name,
        time: fact.value.value,
        temperature: fact.value.temperature,
        peak: kelvin(peak),
      };
      context.report({
        at: last.step.path,
        message: text(
          'the part is loaded and gets no warmer than {peak}: {resin} has its full strength and heat resistance after {time} at {temperature}',
          shown,
        ),
        related: [{ at: fact.at, message: text('the postcure of {resin}', shown) }],
      });
    }
  },
});
